import type { Job } from '../../geometry/job.ts'
import { quantities } from '../../geometry/quantities.ts'
import { type Cause, playForSkew } from '../../geometry/squareness.ts'
import { tan } from '../../geometry/trigonometry.ts'
import { radFromDeg } from '../../geometry/units.ts'

/** Stops shifted to one side. */
export interface StopShift {
  readonly leftTurns: number
  readonly rightTurns: number
  /** Right less left, the difference added (mm). */
  readonly addedMm: number
  /** False: one side would have to be closed further than shut, or opened beyond its travel. */
  readonly reachable: boolean
}

/** Stop screws are set to a twentieth of a turn. */
const STEPS = 20

/** Shifts a steered job's stops so that the edge turns by so much; null for a fixture without stop screws whose arm and pitch are known. */
export const shiftStops = ({ fixture, motion }: Job, turnDeg: number): StopShift | null => {
  const { kind, guideArmMm, screwPitchMm } = fixture
  if (kind !== 'steered' || guideArmMm === null || screwPitchMm === null) return null
  const addedMm = playForSkew(turnDeg, guideArmMm)
  const half = addedMm / 2 / screwPitchMm
  const set = (turns: number) => Math.round(turns * STEPS) / STEPS
  const leftTurns = set(motion.stopTurnsLeft - half)
  const rightTurns = set(motion.stopTurnsRight + half)
  const { max } = quantities.motion.stopTurnsLeft
  const reachable = leftTurns >= 0 && rightTurns >= 0 && leftTurns <= max && rightTurns <= max
  return { leftTurns, rightTurns, addedMm, reachable }
}

/** The job with its stops shifted. */
export const withShift = (job: Job, { leftTurns, rightTurns }: StopShift): Job => ({
  ...job,
  motion: { ...job.motion, stopTurnsLeft: leftTurns, stopTurnsRight: rightTurns, yawLeftDeg: null, yawRightDeg: null },
})

/** Key of the job's errors that a cause is; stops are set, not an error. */
const errorKeys: Partial<Record<Cause, keyof Job['errors']>> = {
  mounting: 'mountingAskewDeg',
  barAskew: 'barAskewDeg',
  barRoll: 'barRollDeg',
  wheelCone: 'wheelConeMm',
}

/** @returns the job with a cause taken as an error of its set-up, so that plan and model reckon with it; null for what is no error of a set-up */
export const withCause = (job: Job, cause: Cause, size: number): Job | null => {
  const key = errorKeys[cause]
  if (key === undefined) return null
  const { min, max } = quantities.errors[key]
  const kept = Number(Math.min(max, Math.max(min, size)).toFixed(3))
  return { ...job, errors: { ...job.errors, [key]: kept } }
}

const NO_ERROR = { mountingAskewDeg: 0, barAskewDeg: 0, barRollDeg: 0, wheelConeMm: 0 }

/** @returns the job as if its set-up were true */
export const withoutCauses = (job: Job): Job => ({ ...job, errors: { ...job.errors, ...NO_ERROR } })

/** Whether the job reckons with a cause. */
export const reckonsWith = ({ errors }: Job): boolean =>
  Object.keys(NO_ERROR).some((key) => errors[key as keyof typeof NO_ERROR] !== 0)

/** Errors of a bar are told over this length (mm): what a rule laid along it shows. */
export const OVER_MM = 100

/** An angle as a difference over the length. */
export const overLengthMm = (deg: number): number => OVER_MM * tan(radFromDeg(deg))
