import { edgeOf } from '../../geometry/edge.ts'
import { freedomOf } from '../../geometry/freedom.ts'
import { advance, type GrindState, startGrind } from '../../geometry/grind.ts'
import type { Job, JobInput } from '../../geometry/job.ts'
import { type Motion, planMotion } from '../../geometry/motion.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import type { Result } from '../../geometry/result.ts'
import { setUpOf } from '../../geometry/setUp.ts'

/** The value, or a failure that names every problem. */
export const found = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(JSON.stringify(result.problems))
  return result.value
}

/** What a test changes of the example, section by section. */
export type Changes = { readonly [S in keyof Omit<JobInput, 'version'>]?: Partial<NonNullable<JobInput[S]>> }

/**
 * The worked example of the design: iron 57 x 3.2 for a low-angle jack, wheel 250 x 50, projection 130, bar 15 over the back,
 * 25 degrees, steered, two turns each side on an arm of 75 with pitch 0.8. Grid 57 x 9 unless changed.
 */
export const exampleInput = (changes: Changes = {}): JobInput => ({
  version: 1,
  blade: {
    widthMm: 57,
    thicknessMm: 3.2,
    seatAngleDeg: 12,
    bevelSide: 'up',
    currentBevelDeg: 25,
    ...changes.blade,
  },
  station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12, ...changes.station },
  fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8, ...changes.fixture },
  aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.5, ...changes.aim },
  motion: { stopTurnsLeft: 2, stopTurnsRight: 2, ...changes.motion },
  errors: { ...changes.errors },
  grid: { across: 57, through: 9, ...changes.grid },
})

export const exampleJob = (changes?: Changes): Job => found(parseJob(exampleInput(changes)))

/** A grind about to begin, with the motion that moves it. */
export interface Begun {
  readonly state: GrindState
  readonly motion: Motion
}

export const begin = (job: Job): Begun => {
  const freedom = found(freedomOf(job, found(setUpOf(job))))
  return { state: found(startGrind(job)), motion: planMotion(job, freedom) }
}

/** The state after all the sweeps of a job's first setting, or some other number. */
export const ground = (job: Job, sweeps = job.motion.sweeps): GrindState => {
  const { state, motion } = begin(job)
  return found(advance(state, motion, sweeps * job.motion.stepsPerSweep))
}

export const edgeOfState = ({ uMm, vMm, throughCount }: GrindState) => edgeOf(uMm, vMm, throughCount)

/** Mean relief of both corners (mm). */
export const reliefMm = (state: GrindState): number => {
  const { reliefLeftMm, reliefRightMm } = edgeOfState(state)
  return (reliefLeftMm + reliefRightMm) / 2
}

/** Greatest difference between two fields (mm), the second one mirrored left to right if wanted. */
export const furthestApartMm = (a: GrindState, b: GrindState, mirrored = false): number => {
  const { acrossCount, throughCount } = a
  let worst = 0
  for (let at = 0; at < a.vMm.length; at++) {
    const i = Math.floor(at / throughCount)
    const other = mirrored ? (acrossCount - 1 - i) * throughCount + (at % throughCount) : at
    worst = Math.max(worst, Math.abs((a.vMm[at] as number) - (b.vMm[other] as number)))
  }
  return worst
}
