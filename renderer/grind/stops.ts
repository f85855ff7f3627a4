import { freedomOf } from '../../geometry/freedom.ts'
import type { Job } from '../../geometry/job.ts'
import type { Side } from '../../geometry/report.ts'
import type { SetUp } from '../../geometry/setUp.ts'
import type { Stops } from '../scene/machine.ts'

/** The job with a stop set to these turns; a yaw that was given for that side gives way to them. */
export const withTurns = (job: Job, side: Side, turns: number): Job => ({
  ...job,
  motion: {
    ...job.motion,
    ...(side === 'left' ? { stopTurnsLeft: turns, yawLeftDeg: null } : { stopTurnsRight: turns, yawRightDeg: null }),
  },
})

/** Free play and turns as they stand; turns follow from the free play where the job gives a yaw. */
export const stopsOf = (job: Job, setUp: SetUp): Stops => {
  const { guideArmMm, screwPitchMm } = job.fixture
  const freedom = freedomOf(job, setUp)
  if (!freedom.ok || guideArmMm === null) return { leftMm: 0, rightMm: 0, leftTurns: 0, rightTurns: 0 }
  const { slopeLeft, slopeRight } = freedom.value.settings[0]
  const leftMm = slopeLeft * guideArmMm
  const rightMm = slopeRight * guideArmMm
  const pitch = screwPitchMm ?? Number.POSITIVE_INFINITY
  return { leftMm, rightMm, leftTurns: leftMm / pitch, rightTurns: rightMm / pitch }
}

/** The field of a stop's turns. */
export const turnsPath = (side: Side) =>
  side === 'left' ? ('motion.stopTurnsLeft' as const) : ('motion.stopTurnsRight' as const)
