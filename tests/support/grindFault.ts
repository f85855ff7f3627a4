import { freedomOf } from '../../geometry/freedom.ts'
import { advance, type GrindState, startGrind } from '../../geometry/grind.ts'
import type { Job } from '../../geometry/job.ts'
import { type Motion, planMotion, settingAt, sweepsOf } from '../../geometry/motion.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { FORCE_TOLERANCE, MOMENT_TOLERANCE } from '../../geometry/tolerances.ts'

/** What came of grinding a job step by step. */
export interface GrindOutcome {
  readonly steps: number
  /** Refused by name, at the door of the grind or at a step. */
  readonly refusal: string | null
  /** What no grind may do; null: nothing. */
  readonly fault: string | null
}

/** On a stiff bed one rounding of the tilt is many parts of the load; ten of them are allowed (see TILT_GRAIN). */
const TILT_GRAINS = 1e-14

/** Unmet balance of the last step, by the sums that it left. */
const unbalanced = ({ weighing: { scales, pose }, uMm, bearing }: GrindState, motion: Motion, step: number) => {
  const { sums } = scales
  const { slopeLeft, slopeRight } = settingAt(motion, step)
  const { loadN } = motion
  const grain = TILT_GRAINS * Math.abs(sums.forcePerDepth)
  if (bearing === 'pin') return sums.force > loadN * (1 + FORCE_TOLERANCE) ? 'the pin pushes' : null
  if (!(Math.abs(sums.force - loadN) <= FORCE_TOLERANCE * loadN + grain)) return `force ${sums.force} of ${loadN}`
  if (motion.byHand) return null
  if (pose.turnSlope > slopeRight || pose.turnSlope < -slopeLeft) return 'beyond a stop'
  if (bearing === 'right') return sums.moment <= 0 ? null : 'the right stop pulls'
  if (bearing === 'left') return sums.moment >= 0 ? null : 'the left stop pulls'
  const held = slopeLeft === 0 && slopeRight === 0
  const most = (MOMENT_TOLERANCE * loadN + grain) * (uMm.at(-1) as number)
  return held || Math.abs(sums.moment) <= most ? null : `moment ${sums.moment} of ${loadN} N`
}

const faultOfStep = (state: GrindState, motion: Motion, before: Float64Array, removedMm3: number): string | null => {
  for (let at = 0; at < before.length; at++) {
    const v = state.vMm[at] as number
    if (!Number.isFinite(v)) return `node ${at} is ${v}`
    if (v < (before[at] as number)) return `node ${at} grew`
  }
  const share = (state.volumeRemovedMm3 - removedMm3) / motion.removalPerStepMm3
  if (state.bearing === 'pin' ? share > 1 + 1e-4 : Math.abs(share - 1) > 1e-9)
    return `took ${share} of the step's steel`
  const angles = [state.yawRad, state.rollRad, state.tiltRad, ...state.pressureNPerMm]
  if (!angles.every(Number.isFinite)) return `angles or pressures ${angles}`
  return unbalanced(state, motion, state.step - 1)
}

/** Grinds a job to its end, looking at every step. */
export const grindOutcome = (job: Job): GrindOutcome => {
  const setUp = setUpOf(job)
  if (!setUp.ok) return { steps: 0, refusal: setUp.problems[0]?.code ?? '', fault: null }
  const freedom = freedomOf(job, setUp.value)
  if (!freedom.ok) return { steps: 0, refusal: freedom.problems[0]?.code ?? '', fault: null }
  const started = startGrind(job)
  if (!started.ok) return { steps: 0, refusal: started.problems[0]?.code ?? '', fault: null }
  const state = started.value
  const motion = planMotion(job, freedom.value)
  const before = state.vMm.slice()
  for (let step = 0; step < sweepsOf(job) * motion.stepsPerSweep; step++) {
    before.set(state.vMm)
    const removedMm3 = state.volumeRemovedMm3
    const ground = advance(state, motion, 1)
    if (!ground.ok) return { steps: step, refusal: ground.problems[0]?.code ?? '', fault: null }
    const fault = faultOfStep(state, motion, before, removedMm3)
    if (fault !== null) return { steps: step, refusal: null, fault: `${job.fixture.kind}, step ${step}: ${fault}` }
  }
  return { steps: state.step, refusal: null, fault: null }
}
