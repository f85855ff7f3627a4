import { radiusOfRelief, reliefOfRadius } from '../../geometry/aim.ts'
import type { Job } from '../../geometry/job.ts'
import type { PlanReport } from '../../geometry/report.ts'
import { type CurveKey, curveKeyOf, withCurve } from './aim.ts'

/** Ways of saying a curve: three that a job knows, and three that come down to a radius or to none. */
export const wayKeys = ['woodReliefMm', 'reliefMm', 'edgeRadiusMm', 'width', 'ridge', 'square'] as const
export type Way = (typeof wayKeys)[number]

/** Ways that ask how the wood sees it. */
const NEEDS_SEAT: readonly Way[] = ['woodReliefMm', 'width', 'ridge']

/** @returns the ways that make sense for a tool */
export const waysFor = ({ blade }: Job): readonly Way[] =>
  wayKeys.filter((way) => blade.seatAngleDeg !== null || !NEEDS_SEAT.includes(way))

/** @returns the way that a job itself gives its curve in */
export const wayOf = (job: Job): Way => {
  const key = curveKeyOf(job)
  return key === 'reliefMm' && job.aim.reliefMm === 0 ? 'square' : key
}

/** Whether a way is a figure of the job itself. */
export const isCurveKey = (way: Way): way is CurveKey =>
  way === 'woodReliefMm' || way === 'reliefMm' || way === 'edgeRadiusMm'

/** Radii are kept to a millimetre: no leaf tells less. */
const whole = (radiusMm: number): number => Math.round(radiusMm)

/** @returns the job with the curve whose shaving is so wide at the job's depth; at the full width it is straight */
export const withWidth = (job: Job, widthMm: number, seatSine: number): Job =>
  widthMm >= job.blade.widthMm
    ? withCurve(job, 'reliefMm', 0)
    : withCurve(job, 'edgeRadiusMm', whole(radiusOfRelief(widthMm, job.aim.shavingDepthMm / seatSine)))

/** @returns the job with the curve whose passes, so far apart, leave ridges so high */
export const withRidge = (job: Job, stepMm: number, ridgeMm: number, seatSine: number): Job =>
  withCurve(job, 'edgeRadiusMm', whole(radiusOfRelief(stepMm, ridgeMm / seatSine)))

/** @returns how high the ridges are that passes so far apart leave, by the curve of the plan */
export const ridgeOf = ({ edgeRadiusMm }: PlanReport, stepMm: number, seatSine: number): number =>
  edgeRadiusMm === null ? 0 : reliefOfRadius(Math.min(stepMm, 2 * edgeRadiusMm), edgeRadiusMm) * seatSine
