import { freedomOf } from '../../geometry/freedom.ts'
import type { Job } from '../../geometry/job.ts'
import type { Side } from '../../geometry/report.ts'
import type { SetUp } from '../../geometry/setUp.ts'
import type { Stops } from '../scene/machine.ts'

/** A stop being turned, not yet the job's. */
export interface StopDraft {
  readonly side: Side
  readonly turns: number
}

/** The job with a stop set to these turns; a yaw that was given for that side gives way to them. */
export const withTurns = (job: Job, side: Side, turns: number): Job => ({
  ...job,
  motion: {
    ...job.motion,
    ...(side === 'left' ? { stopTurnsLeft: turns, yawLeftDeg: null } : { stopTurnsRight: turns, yawRightDeg: null }),
  },
})

/** Free play and turns as they stand; turns follow from the free play where the job gives a yaw. */
export const stopsOf = (job: Job, setUp: SetUp, draft: StopDraft | null): Stops => {
  const shown = draft ? withTurns(job, draft.side, draft.turns) : job
  const { guideArmMm, screwPitchMm } = job.fixture
  const freedom = freedomOf(shown, setUp)
  if (!freedom.ok || guideArmMm === null) return { leftMm: 0, rightMm: 0, leftTurns: 0, rightTurns: 0 }
  const { slopeLeft, slopeRight } = freedom.value.settings[0]
  const leftMm = slopeLeft * guideArmMm
  const rightMm = slopeRight * guideArmMm
  const pitch = screwPitchMm ?? Number.POSITIVE_INFINITY
  return { leftMm, rightMm, leftTurns: leftMm / pitch, rightTurns: rightMm / pitch }
}

/** Pixels of a drag that make one turn: a full turn is a thumb's width, a twentieth of a turn can still be met. */
const PX_PER_TURN = 64
/** Turns are taken in twentieths, as fine as a hand sets a screw. */
const TURNS_STEP = 0.05

/** Turns after a drag outwards by so many pixels. @param most the fixture's range */
export const draggedTurns = (fromTurns: number, outwardPx: number, most: number): number => {
  const turns = Math.round((fromTurns + outwardPx / PX_PER_TURN) / TURNS_STEP) * TURNS_STEP
  return Number(Math.min(Math.max(turns, 0), most).toFixed(2))
}
