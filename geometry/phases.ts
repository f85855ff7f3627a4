import { reliefOf } from './edge.ts'
import { quickJob } from './formed.ts'
import type { Freedom, Stops } from './freedom.ts'
import { advance, type GrindState, startGrind } from './grind.ts'
import type { Job } from './job.ts'
import { type Motion, type MotionSetting, planMotion } from './motion.ts'

/** One setting while it is sought: stops as slopes, sweeps not yet whole. */
export interface Phase extends Stops {
  readonly fingerReachMm: number
  readonly sweeps: number
}

/** A grind on the coarse grid, about to begin. */
export interface CoarseGrind {
  readonly state: GrindState
  readonly motion: Motion
}

/** What a schedule is sought for. */
export interface Sought {
  readonly job: Job
  readonly freedom: Freedom
}

/**
 * A first setting counts as done when a tenth more steel moves its relief by less than this share: what is left to come is
 * then less than a feeler gauge tells, at a third of the sweeps that the last of the drift would take.
 */
const DONE_SHARE = 0.01
/** Looks, each a tenth more steel later, before the edge is taken as it is. */
const MOST_LOOKS = 10
/** Sweeps come in pairs, there and back, so that no setting ends with one side a sweep ahead. */
const PAIR = 2

/** @returns whole pairs of sweeps, at least one pair */
export const inPairs = (sweeps: number): number => Math.max(Math.round(sweeps / PAIR), 1) * PAIR

/** The motion of one setting alone, going on for ever, its steel per sweep given. */
const motionOf = (motion: Motion, phase: Phase, removalPerSweepMm3: number): Motion => {
  const first = motion.settings[0] as MotionSetting
  const { slopeLeft, slopeRight, fingerReachMm } = phase
  const setting = { ...first, slopeLeft, slopeRight, fingerReachMm, untilStep: Number.POSITIVE_INFINITY }
  return { ...motion, settings: [setting], removalPerStepMm3: removalPerSweepMm3 / motion.stepsPerSweep }
}

const meanReliefMm = ({ vMm, throughCount }: GrindState): number => {
  const { leftMm, rightMm } = reliefOf(vMm, throughCount)
  return (leftMm + rightMm) / 2
}

/** Grinds the first setting on the coarse grid until it is formed well enough. @returns null where nothing balances */
export const formFirst = ({ job, freedom }: Sought, stops: Stops): CoarseGrind | null => {
  const quick = quickJob(job, Math.max(stops.slopeLeft, stops.slopeRight) * freedom.edgePerTurn)
  const started = startGrind(quick)
  if (!started.ok) return null
  const state = started.value
  const motion = planMotion(quick, { ...freedom, settings: [stops] })
  const grindOn = (sweeps: number) => advance(state, motion, inPairs(sweeps) * motion.stepsPerSweep).ok
  if (!grindOn(quick.motion.sweeps)) return null
  for (let look = 0, beforeMm = meanReliefMm(state); look < MOST_LOOKS; look++) {
    if (!grindOn(quick.motion.sweeps / 10)) return null
    const nowMm = meanReliefMm(state)
    if (Math.abs(nowMm - beforeMm) < DONE_SHARE * nowMm) break
    beforeMm = nowMm
  }
  return { state, motion }
}

/** Sweeps of a further setting in a trial at most; longer ones take bigger bites, still no bigger than the first setting's. */
const MOST_TRIAL_SWEEPS = 24

/** Grinds one more setting on the coarse grid, in the job's own bites where it is short. @returns false where nothing balances */
export const grindPhase = ({ state, motion }: CoarseGrind, phase: Phase, { job }: Sought): boolean => {
  const sweeps = Math.min(phase.sweeps, MOST_TRIAL_SWEEPS)
  const removalPerSweepMm3 = (job.motion.removalPerSweepMm3 * phase.sweeps) / sweeps
  return advance(state, motionOf(motion, phase, removalPerSweepMm3), Math.round(sweeps * motion.stepsPerSweep)).ok
}
