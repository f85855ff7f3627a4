import { type GrindSnapshot, restore, snapshot } from '../../geometry/grind.ts'
import { MOST_SAMPLES } from '../../geometry/job.ts'
import { pathAt } from '../../geometry/motion.ts'
import type { GrindRun } from './grindRun.ts'

/** The planned path laid out step by step, with room behind for all that a hand can add and a job can hold. */
const laidOut = (run: GrindRun): Float64Array =>
  Float64Array.from({ length: run.lastStep + MOST_SAMPLES }, (_, step) => pathAt(run.motion, step))

/**
 * Puts the run from the head's step on into the hand's keeping: what was to come there is dropped, from the scout's memory
 * too. A run that is made by hand already, up to this very step, just goes on.
 * @returns whether anything was dropped
 */
export const takeByHand = (run: GrindRun): boolean => {
  const { head, scout } = run
  if (run.handFromStep !== null && head.step === run.lastStep) return false
  if (run.handFromStep === null) run.motion = { ...run.motion, path: laidOut(run) }
  run.handFromStep = Math.min(run.handFromStep ?? head.step, head.step)
  run.lastStep = head.step
  run.trouble = null
  forgetAfter(run, head.step)
  if (scout.step > head.step) restore(scout, snapshot(head))
  return true
}

/** Drops keyframes and events of later steps. */
const forgetAfter = ({ keyframes, keyframeSteps, events }: GrindRun, last: number): void => {
  keyframes.length = Math.min(keyframes.length, Math.floor(last / keyframeSteps) + 1)
  events.splice(0, events.length, ...events.filter(({ step }) => step <= last))
}

/** A run as it was before a hand took it over. */
export interface RunTaken {
  /** Where it was taken. */
  readonly step: number
  readonly kept: Pick<GrindRun, 'motion' | 'lastStep' | 'handFromStep' | 'trouble'>
}

/** @returns what has to be kept to give the run back as it is now; a path that the hand will write over is copied */
export const runTaken = ({ motion, lastStep, handFromStep, trouble, head }: GrindRun): RunTaken => {
  const own = handFromStep === null ? motion : { ...motion, path: motion.path.slice() }
  return { step: head.step, kept: { motion: own, lastStep, handFromStep, trouble } }
}

/** Gives the run back as it was taken, with its scout at the last keyframe before; the head is left to its next goal. */
export const giveRunBack = (run: GrindRun, { step, kept }: RunTaken): void => {
  const { head, scout, keyframes, keyframeSteps } = run
  Object.assign(run, kept)
  const last = keyframes[Math.min(Math.floor(step / keyframeSteps), keyframes.length - 1)] as GrindSnapshot
  forgetAfter(run, last.step)
  restore(scout, last)
  if (head.step > step) restore(head, last)
}

/** Adds one step with the load at this share of the reach. @returns false when a job could hold no more of them */
export const addByHand = (run: GrindRun, share: number): boolean => {
  if (run.lastStep - (run.handFromStep ?? 0) >= MOST_SAMPLES) return false
  run.motion.path[run.lastStep++] = Math.min(Math.max(share, -1), 1)
  return true
}

/** The steps made by hand so far: where the load stood in each, -1 left to +1 right of the reach. */
export const handPathOf = ({ motion, handFromStep, lastStep }: GrindRun): Float64Array =>
  motion.path.slice(handFromStep ?? lastStep, lastStep)
