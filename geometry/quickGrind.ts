import { type Relief, reliefOf } from './edge.ts'
import { freedomOf, settingsOf } from './freedom.ts'
import { advance, type GrindState, startGrind } from './grind.ts'
import type { Job } from './job.ts'
import { type Motion, type MotionSetting, planMotion } from './motion.ts'
import { setUpOf } from './setUp.ts'

/** Grid and pace of the quickest grind that still feels every input: some two hundred steps of some microseconds each. */
const GRID = { across: 17, through: 5 }
const STEPS_PER_SWEEP = 12
/** Sweeps for one setting at most; longer ones take bigger bites. Even, so that it ends as it began. */
const MOST_SWEEPS = 16

/** What differences are taken of: relief of both corners, whose difference is the skew. */
export type Edge = Relief

/** One setting alone, its whole steel in a few sweeps. */
interface Part {
  readonly motion: Motion
  readonly sweeps: number
}

const partsOf = (job: Job, motion: Motion): readonly Part[] =>
  settingsOf(job).map(({ sweeps }, k) => {
    const few = Math.min(sweeps, MOST_SWEEPS)
    const setting: MotionSetting = { ...(motion.settings[k] as MotionSetting), untilStep: Number.POSITIVE_INFINITY }
    const removalPerStepMm3 = (motion.removalPerStepMm3 * sweeps) / few
    return { motion: { ...motion, settings: [setting], removalPerStepMm3 }, sweeps: few }
  })

const meanOf = (a: Edge, b: Edge): Edge => ({
  leftMm: (a.leftMm + b.leftMm) / 2,
  rightMm: (a.rightMm + b.rightMm) / 2,
})

/** Mean of the edges before and after the last sweep, between which a big bite sways it from side to side. */
const grindOut = (state: GrindState, parts: readonly Part[]): Edge | null => {
  const grind = (motion: Motion, sweeps: number) => advance(state, motion, sweeps * STEPS_PER_SWEEP).ok
  const last = parts[parts.length - 1] as Part
  if (!parts.every((part) => grind(part.motion, part === last ? part.sweeps - 1 : part.sweeps))) return null
  const before = reliefOf(state.vMm, state.throughCount)
  if (!grind(last.motion, 1)) return null
  const after = reliefOf(state.vMm, state.throughCount)
  return last.sweeps === 1 ? after : meanOf(before, after)
}

/**
 * All of a job's steel taken in a few big bites on a coarse grid: the edge is off by some per cent, but nearly as much after
 * a small change of the job, so differences are right within a fifth or so, and smooth in whatever changes.
 * @returns null where the set-up closes no more or nothing balances
 */
export const quickGrind = (job: Job): Edge | null => {
  const quick: Job = {
    ...job,
    station: { ...job.station, grindingRatio: null },
    grid: GRID,
    motion: { ...job.motion, stepsPerSweep: STEPS_PER_SWEEP },
  }
  const setUp = setUpOf(quick)
  if (!setUp.ok) return null
  const freedom = freedomOf(quick, setUp.value)
  const started = startGrind(quick)
  if (!freedom.ok || !started.ok) return null
  return grindOut(started.value, partsOf(quick, planMotion(quick, freedom.value)))
}
