import type { SchedulePlan } from '../../geometry/schedulePlans.ts'

/** One more setting must bring the edge nearer by this (mm): under it the figures shown would be the same. */
const NEARER_MM = 0.0005

/** @returns the plans that are each nearer to the curve than all those with fewer settings */
export const worthTelling = (plans: readonly SchedulePlan[]): readonly SchedulePlan[] =>
  plans.filter(({ deviationMm }, k) => plans.slice(0, k).every((fewer) => fewer.deviationMm - deviationMm >= NEARER_MM))
