import type { Job } from './job.ts'
import { quantities } from './quantities.ts'
import type { Side } from './report.ts'
import { failed, ok, problem, type Result } from './result.ts'
import type { SetUp } from './setUp.ts'
import { atan, sin, tan } from './trigonometry.ts'
import { degFromRad, radFromDeg } from './units.ts'

/**
 * How far the fixture lets the blade yaw, as slopes of the edge line in the plane of the back: tan(yaw) = free play / guide arm.
 * Both are >= 0; right is the yaw that lets the right corner be ground back. A square fixture has none, whatever its stops say.
 */
export interface Freedom {
  readonly yawSlopeLeft: number
  readonly yawSlopeRight: number
  /** Pivot to edge, along the blade: projection + setback. */
  readonly pivotToEdgeMm: number
}

/** Steepest yaw that any fixture here is given, as a slope. */
const steepestSlope = (): number => tan(radFromDeg(quantities.motion.yawLeftDeg.max))

/** @returns the slope that stop turns give, or null where arm or pitch is not known */
export const slopeOfTurns = (job: Job, turns: number): number | null => {
  const { guideArmMm, screwPitchMm } = job.fixture
  return guideArmMm === null || screwPitchMm === null ? null : (turns * screwPitchMm) / guideArmMm
}

/** @returns most turns before the steepest yaw or the end of the screw, or null where arm or pitch is not known */
export const mostTurns = (job: Job): number | null => {
  const perTurn = slopeOfTurns(job, 1)
  return perTurn === null ? null : Math.min(quantities.motion.stopTurnsLeft.max, steepestSlope() / perTurn)
}

const slopeOfSide = (job: Job, side: Side): Result<number> => {
  if (job.fixture.kind === 'square') return ok(0)
  const [yawDeg, turns, path] =
    side === 'left'
      ? [job.motion.yawLeftDeg, job.motion.stopTurnsLeft, 'motion.stopTurnsLeft']
      : [job.motion.yawRightDeg, job.motion.stopTurnsRight, 'motion.stopTurnsRight']
  if (yawDeg !== null) return ok(tan(radFromDeg(yawDeg)))
  const slope = slopeOfTurns(job, turns)
  if (slope === null) {
    const absent = job.fixture.guideArmMm === null ? 'guideArmMm' : 'screwPitchMm'
    return failed(problem('turnsNeedPitch', `fixture.${absent}`))
  }
  if (slope > steepestSlope()) return failed(problem('tooLarge', path, { max: mostTurns(job) as number }))
  return ok(slope)
}

/** The freedom that fixture and stops of a job leave. */
export const freedomOf = (job: Job, setUp: SetUp): Result<Freedom> => {
  const left = slopeOfSide(job, 'left')
  if (!left.ok) return left
  const right = slopeOfSide(job, 'right')
  if (!right.ok) return right
  const pivotToEdgeMm = setUp.projectionMm + job.fixture.pivotSetbackMm
  if (!(pivotToEdgeMm > 0)) return failed(problem('pivotBeyondEdge', 'fixture.pivotSetbackMm'))
  return ok({ yawSlopeLeft: left.value, yawSlopeRight: right.value, pivotToEdgeMm })
}

/** Yaw and travel of the edge's midpoint on each side, as a user reads them. */
export const freedomFigures = ({ yawSlopeLeft, yawSlopeRight, pivotToEdgeMm }: Freedom) => {
  const yawLeftRad = atan(yawSlopeLeft)
  const yawRightRad = atan(yawSlopeRight)
  return {
    yawLeftDeg: degFromRad(yawLeftRad),
    yawRightDeg: degFromRad(yawRightRad),
    sweepLeftMm: pivotToEdgeMm * sin(yawLeftRad),
    sweepRightMm: pivotToEdgeMm * sin(yawRightRad),
  }
}
