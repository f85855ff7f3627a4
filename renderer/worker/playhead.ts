import type { GrindState } from '../../geometry/grind.ts'
import { advanceHead, type GrindRun, jumpHead, keyframeReady, rowOf, type Stance } from './grindRun.ts'
import { giveUp, type Hand, moveByHand, obeyHand, remake } from './hand.ts'
import type { RunTaken } from './handRun.ts'
import type { Frame, FrameArrays, ToWorker } from './protocol.ts'

/** Pause between slices while playing (ms): two slices and more fit into a frame of a 60 Hz screen. */
const PLAY_PAUSE_MS = 4

/** A run with its playhead: where it should stand, and what the window has been told. */
export interface Live {
  readonly number: number
  readonly run: GrindRun
  /** Arrays at hand; empty while the window holds them all, and then no frame is sent. */
  readonly spare: FrameArrays[]
  /** Where the head should stand, in steps; not whole while playing. */
  goal: number
  /** 0 while paused. */
  stepsPerMs: number
  playedAtMs: number
  /** The hand on the blade; null: none. */
  hand: Hand | null
  /** The run before this hand made its first step; null: it has made none. */
  taken: RunTaken | null
  historySent: number
  eventsSent: number
  /** The hand took the run over: what the window was told of later sweeps is void. */
  overtaken: boolean
  /** The hand has made steps that the window was not told of. */
  handUntold: boolean
  troubleSent: boolean
  /** The head has moved, or the play has stopped, since the last frame. */
  stale: boolean
}

/** Frames in the air: one drawn, one on its way, one being filled. */
const ARRAY_SETS = 3

const arraysFor = ({ vMm, pressureNPerMm }: GrindState): FrameArrays[] =>
  Array.from({ length: ARRAY_SETS }, () => ({
    vMm: new Float64Array(vMm.length),
    pressureNPerMm: new Float64Array(pressureNPerMm.length),
  }))

/** @returns a run at its start, paused; nothing sent yet */
export const liveOf = (number: number, run: GrindRun): Live => ({
  number,
  run,
  spare: arraysFor(run.head),
  goal: 0,
  stepsPerMs: 0,
  playedAtMs: 0,
  hand: null,
  taken: null,
  historySent: 0,
  eventsSent: 0,
  overtaken: false,
  handUntold: false,
  troubleSent: false,
  stale: true,
})

const between = (before: Stance, now: Stance, share: number, key: keyof Stance): number =>
  before[key] + (now[key] - before[key]) * share

/** How far the drawn machine is from the step before to the step now. */
const shareOf = ({ goal, run }: Live): number => {
  const ahead = run.head.step - goal
  return ahead > 0 && ahead < 1 ? 1 - ahead : 1
}

/** @returns the moment of the playhead, written into `arrays`, which go with it */
export const frameOf = (live: Live, arrays: FrameArrays): Frame => {
  const { run, number } = live
  const { head, before, motion } = run
  const share = shareOf(live)
  arrays.vMm.set(head.vMm)
  arrays.pressureNPerMm.set(head.pressureNPerMm)
  return {
    ...arrays,
    ...rowOf(head),
    run: number,
    step: head.step,
    sweep: (head.step - 1 + share) / motion.stepsPerSweep,
    playing: live.stepsPerMs > 0 || live.hand !== null,
    held: live.hand !== null,
    lastStep: run.lastStep,
    handFromStep: run.handFromStep,
    yawRad: between(before, head, share, 'yawRad'),
    tiltRad: between(before, head, share, 'tiltRad'),
    traverseMm: between(before, head, share, 'traverseMm'),
    loadPlaceMm: between(before, head, share, 'loadPlaceMm'),
    bearing: head.bearing,
    volumeRemovedMm3: head.volumeRemovedMm3,
  }
}

/** Where the head should stand by now. A play that reaches the end of the run pauses there. */
export const moveGoal = (live: Live, clockMs: number): void => {
  if (live.hand) moveByHand(live, live.hand, clockMs)
  if (live.stepsPerMs === 0) return
  live.goal = Math.min(live.goal + (clockMs - live.playedAtMs) * live.stepsPerMs, live.run.lastStep)
  live.playedAtMs = clockMs
  if (live.goal === live.run.lastStep) live.stepsPerMs = 0
  live.stale = true
}

/**
 * Brings the head to its goal as far as time allows. A seek beyond what the scout has worked out waits for the scout, which
 * has that way to go in any case. Played faster than can be reckoned, the clock waits for the
 * grind.
 */
export const followGoal = (live: Live, outOfTime: () => boolean): void => {
  const { run } = live
  live.goal = Math.min(live.goal, run.lastStep)
  if (run.head.step >= live.goal) return
  if (live.stepsPerMs === 0 && !live.hand) {
    if (!keyframeReady(run, live.goal)) return
    jumpHead(run, live.goal)
  }
  live.stale = true
  advanceHead(run, Math.ceil(live.goal), outOfTime)
  if (live.stepsPerMs > 0 || run.lastStep < live.goal) live.goal = Math.min(live.goal, run.head.step)
  if (run.trouble) live.hand = null
}

/** How soon a live grind wants its next slice (ms); null: it rests. */
export const restOf = ({ run, goal, stepsPerMs, hand }: Live): number | null => {
  if (run.head.step < goal) return 0
  if (stepsPerMs > 0 || hand) return PLAY_PAUSE_MS
  return run.scout.step < run.lastStep ? 0 : null
}

type GrindMessage = Exclude<ToWorker, { type: 'solve' | 'schedule' | 'diagnose' | 'start' }>

/** What each message does to a live grind. */
export const obey = (live: Live, message: GrindMessage, clockMs: number): void => {
  if (message.type === 'give') {
    live.spare.push({ vMm: message.vMm, pressureNPerMm: message.pressureNPerMm })
    return
  }
  live.stale = true
  if (message.type === 'hold' || message.type === 'press') obeyHand(live, message, clockMs)
  else if (message.type === 'remake') remake(live, message.path)
  else if (message.type === 'giveUp') giveUp(live)
  else obeyTime(live, message, clockMs)
}

type TimeMessage = Exclude<GrindMessage, { type: 'give' | 'hold' | 'press' | 'remake' | 'giveUp' }>

/** Play, pause, seek, let go: a hand that holds lets go in each. */
const obeyTime = (live: Live, message: TimeMessage, clockMs: number): void => {
  live.hand = null
  if (message.type === 'play') {
    live.stepsPerMs = (message.sweepsPerSecond * live.run.motion.stepsPerSweep) / 1000
    live.playedAtMs = clockMs
    return
  }
  live.stepsPerMs = 0
  if (message.type === 'seek' && message.step < live.run.head.step) jumpHead(live.run, message.step)
  live.goal = message.type === 'seek' ? message.step : live.run.head.step
}
