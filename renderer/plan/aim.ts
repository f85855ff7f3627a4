import type { Job } from '../../geometry/job.ts'
import { quantities } from '../../geometry/quantities.ts'
import type { ForAimReport, PlanReport, TurnsReport } from '../../geometry/report.ts'

/** The three ways of giving a curve; a job uses just one. */
export const curveKeys = ['reliefMm', 'woodReliefMm', 'edgeRadiusMm'] as const
export type CurveKey = (typeof curveKeys)[number]

/** @returns the way this job gives its curve */
export const curveKeyOf = ({ aim }: Job): CurveKey => curveKeys.find((key) => aim[key] !== null) ?? 'reliefMm'

/** @returns the job with its curve given in one way, the others left empty */
export const withCurve = (job: Job, key: CurveKey, value: number | null): Job => ({
  ...job,
  aim: { ...job.aim, reliefMm: null, woodReliefMm: null, edgeRadiusMm: null, [key]: value },
})

/** Decimals kept when the same curve is given in another way: so many that the way there and back ends where it began. */
const KEPT: Record<CurveKey, number> = { reliefMm: 3, woodReliefMm: 4, edgeRadiusMm: 0 }
/** Stands for a straight edge where a radius is asked for (mm): its relief is under what a leaf can tell on any iron. */
const NEARLY_STRAIGHT_MM = 100_000

/** @returns the curve of a plan, as this way gives it */
export const curveIn = (plan: PlanReport, key: CurveKey): number => {
  const value = plan[key] ?? (key === 'edgeRadiusMm' ? NEARLY_STRAIGHT_MM : 0)
  return Number(value.toFixed(KEPT[key]))
}

/** Stops for the aim, in turns of a screw, and how long they take. */
interface Stops {
  readonly turnsForAim: TurnsReport
  readonly forAim: ForAimReport | null
}

/** Stop screws are set to a twentieth of a turn by eye; finer is not to be had. */
const TURN_STEP = 0.05

/** @returns turns as they can be set */
export const settableTurns = (turns: number): number => Number((Math.round(turns / TURN_STEP) * TURN_STEP).toFixed(2))

/** Sweeps are counted by tens at the wheel. */
const SWEEPS_STEP = 10

/** @returns sweeps as a person counts them: two figures that matter, rounded up, within what a job may hold */
export const countableSweeps = (sweeps: number): number => {
  const step = Math.max(SWEEPS_STEP, 10 ** (Math.floor(Math.log10(Math.max(sweeps, 1))) - 1))
  return Math.min(Math.ceil(sweeps / step) * step, quantities.motion.sweeps.max)
}

/** @returns the job with its stops set for the aim, and as many sweeps as it takes to form it where it can be */
export const withStops = (job: Job, { turnsForAim: turns, forAim }: Stops): Job => ({
  ...job,
  motion: {
    ...job.motion,
    ...(forAim?.reachable && forAim.sweeps > 0 ? { sweeps: countableSweeps(forAim.sweeps) } : {}),
    stopTurnsLeft: settableTurns(turns.left),
    stopTurnsRight: settableTurns(turns.right),
    yawLeftDeg: null,
    yawRightDeg: null,
    schedule: [],
  },
})

/** Two settings nearer than this are one (turns). */
const SAME_TURNS = 0.001

/** @returns whether the stops stand as the aim asks */
export const stopsMeet = ({ motion }: Job, turns: TurnsReport): boolean =>
  motion.schedule.length === 0 &&
  motion.yawLeftDeg === null &&
  motion.yawRightDeg === null &&
  Math.abs(motion.stopTurnsLeft - settableTurns(turns.left)) < SAME_TURNS &&
  Math.abs(motion.stopTurnsRight - settableTurns(turns.right)) < SAME_TURNS
