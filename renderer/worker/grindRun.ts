import { reliefOf } from '../../geometry/edge.ts'
import { freedomOf } from '../../geometry/freedom.ts'
import { advance, type GrindSnapshot, type GrindState, restore, snapshot, startGrind } from '../../geometry/grind.ts'
import { inkLeftShare } from '../../geometry/ink.ts'
import type { Job } from '../../geometry/job.ts'
import { type Motion, planMotion } from '../../geometry/motion.ts'
import { ok, type Problem, type Result } from '../../geometry/result.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import type { HistoryRow, RunShape } from './protocol.ts'
import { noteEvents, type RunEvent } from './runEvents.ts'

/** Most moments kept to go back to; on the usual grid they take about 6 MB. */
const MOST_KEYFRAMES = 400

/** Where the machine stands. */
export interface Stance {
  yawRad: number
  tiltRad: number
  traverseMm: number
  loadPlaceMm: number
}

/**
 * One grind, held as time: a head that plays and seeks, and a scout that works the whole run out ahead of it, noting the
 * relief of each sweep and leaving keyframes. The engine is deterministic, so a keyframe of the scout is the head's own past.
 */
export interface GrindRun {
  /** As the job plans it; from the first step made by hand on with a path of its own. */
  motion: Motion
  readonly head: GrindState
  readonly scout: GrindState
  readonly keyframes: GrindSnapshot[]
  readonly keyframeSteps: number
  /** What happened for the first time, as far as the scout has come. */
  readonly events: RunEvent[]
  /** Stance of the head one step before. */
  readonly before: Stance
  /** Last step that can be reached; comes down where the scout finds no balance, and follows the hand. */
  lastStep: number
  /** From this step on the run is made by hand; null: nowhere. */
  handFromStep: number | null
  trouble: readonly Problem[] | null
}

const copyStance = (from: Stance, to: Stance): void => {
  to.yawRad = from.yawRad
  to.tiltRad = from.tiltRad
  to.traverseMm = from.traverseMm
  to.loadPlaceMm = from.loadPlaceMm
}

const motionOf = (job: Job): Result<Motion> => {
  const setUp = setUpOf(job)
  if (!setUp.ok) return setUp
  const freedom = freedomOf(job, setUp.value)
  return freedom.ok ? ok(planMotion(job, freedom.value)) : freedom
}

/** Begins a run. @returns the problems of the job where it cannot be ground */
export const startRun = (job: Job): Result<GrindRun> => {
  const motion = motionOf(job)
  if (!motion.ok) return motion
  const [head, scout] = [startGrind(job), startGrind(job)]
  if (!head.ok) return head
  if (!scout.ok) return scout
  const { sweeps, stepsPerSweep } = job.motion
  const before: Stance = { yawRad: 0, tiltRad: 0, traverseMm: 0, loadPlaceMm: 0 }
  copyStance(head.value, before)
  return ok({
    motion: motion.value,
    head: head.value,
    scout: scout.value,
    keyframes: [snapshot(scout.value)],
    keyframeSteps: Math.ceil(sweeps / MOST_KEYFRAMES) * stepsPerSweep,
    events: [],
    before,
    lastStep: sweeps * stepsPerSweep,
    handFromStep: null,
    trouble: null,
  })
}

/** What the window needs to know of a run once. */
export const shapeOf = ({ head, motion, lastStep }: GrindRun, run: number): RunShape => ({
  run,
  acrossCount: head.acrossCount,
  throughCount: head.throughCount,
  uMm: head.uMm,
  nMm: head.nMm,
  vStartMm: head.vStartMm,
  stepsPerSweep: motion.stepsPerSweep,
  sweeps: lastStep / motion.stepsPerSweep,
})

/** The relief and ink of a state, as a line of the history. */
export const rowOf = (state: GrindState): HistoryRow => {
  const relief = reliefOf(state.vMm, state.throughCount)
  return { reliefLeftMm: relief.leftMm, reliefRightMm: relief.rightMm, inkLeftShare: inkLeftShare(state) }
}

/**
 * Moves the head on until it stands at `step`, or the time is up.
 * @param outOfTime asked after each step
 */
export const advanceHead = (run: GrindRun, step: number, outOfTime: () => boolean): void => {
  const goal = Math.min(step, run.lastStep)
  while (run.head.step < goal) {
    copyStance(run.head, run.before)
    const moved = advance(run.head, run.motion, 1)
    if (!moved.ok) endAt(run, run.head.step, moved.problems)
    if (!moved.ok || outOfTime()) return
  }
}

/** Whether the keyframe next before `step` is there, or the head stands nearer already. */
export const keyframeReady = ({ keyframes, keyframeSteps, head }: GrindRun, step: number): boolean => {
  const before = Math.floor(step / keyframeSteps)
  return keyframes.length > before || (head.step <= step && head.step >= before * keyframeSteps)
}

/** Puts the head on the keyframe nearest before `step`, unless it stands nearer already; `advanceHead` does the rest. */
export const jumpHead = (run: GrindRun, step: number): void => {
  const { head, keyframes, keyframeSteps } = run
  const keyframe = keyframes[Math.min(Math.floor(step / keyframeSteps), keyframes.length - 1)] as GrindSnapshot
  if (head.step <= step && head.step >= keyframe.step) return
  restore(head, keyframe)
  copyStance(head, run.before)
}

/**
 * Moves the scout on until the time is up.
 * @returns the sweeps it finished, to be appended to the history
 */
export const advanceScout = (run: GrindRun, outOfTime: () => boolean): readonly HistoryRow[] => {
  const { scout, motion } = run
  const rows: HistoryRow[] = []
  while (scout.step < run.lastStep) {
    const moved = advance(scout, motion, 1)
    if (!moved.ok) {
      endAt(run, scout.step, moved.problems)
      break
    }
    noteEvents(run.events, scout)
    if (scout.step % run.keyframeSteps === 0) run.keyframes.push(snapshot(scout))
    if (scout.step % motion.stepsPerSweep === 0) rows.push(rowOf(scout))
    if (outOfTime()) break
  }
  return rows
}

const endAt = (run: GrindRun, step: number, problems: readonly Problem[]): void => {
  run.lastStep = Math.min(run.lastStep, step)
  run.trouble ??= problems
}
