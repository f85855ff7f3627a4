import { GUESSED_SWEEP_SECONDS } from '../../geometry/removal.ts'
import { addByHand, giveRunBack, runTaken, takeByHand } from './handRun.ts'
import type { Live } from './playhead.ts'
import type { ToWorker } from './protocol.ts'

/** Sweeps a second of a hand that holds the blade: as the job counts them, so that a sweep's time takes a sweep's steel. */
const HAND_SWEEPS_PER_SECOND = 1 / GUESSED_SWEEP_SECONDS

/** A hand unheard of for longer than this (ms) was not grinding: a window that slept makes no steel fly. */
const MOST_GAP_MS = 250

/** The hand on the blade. */
export interface Hand {
  /** Where the load was when steps were last made, as a share of the reach. */
  madeShare: number
  /** Where it is now. */
  share: number
  /** Part of a step not yet made, 0 to 1. */
  part: number
  movedAtMs: number
}

const sweepOf = ({ run }: Live, step: number): number => Math.floor(step / run.motion.stepsPerSweep)

/** What was told of sweeps beyond the scout is void. */
const voidLater = (live: Live): void => {
  live.historySent = Math.min(live.historySent, sweepOf(live, live.run.scout.step) + 1)
  live.overtaken = true
}

/**
 * Stops any play and takes the run over where the head stands; what was told of later sweeps is void. A head still on its
 * way to the end of what the hand has made goes on to there: quick presses lose nothing.
 */
const takeOver = (live: Live): void => {
  live.stepsPerMs = 0
  if (live.run.handFromStep !== null && live.goal === live.run.lastStep) return
  if (!takeByHand(live.run)) return
  live.goal = live.run.head.step
  voidLater(live)
}

/** Makes the steps that are due by now, the load going evenly from where it was to where it is. */
export const moveByHand = (live: Live, hand: Hand, clockMs: number): void => {
  const perMs = (HAND_SWEEPS_PER_SECOND * live.run.motion.stepsPerSweep) / 1000
  const due = hand.part + Math.min(clockMs - hand.movedAtMs, MOST_GAP_MS) * perMs
  const whole = Math.floor(due)
  hand.movedAtMs = clockMs
  hand.part = due - whole
  if (whole === 0) return
  // Until its first step the plan stands.
  if (live.taken === null) {
    live.taken = runTaken(live.run)
    takeOver(live)
  }
  for (let k = 1; k <= whole && live.hand; k++) add(live, hand.madeShare + ((hand.share - hand.madeShare) * k) / whole)
  hand.madeShare = hand.share
}

const add = (live: Live, share: number): void => {
  if (!addByHand(live.run, share)) live.hand = null
  live.handUntold = true
  live.goal = live.run.lastStep
  live.stale = true
}

/** A hand that only touches stops the play where it is. */
const stand = (live: Live): void => {
  live.stepsPerMs = 0
  if (live.run.handFromStep === null || live.goal !== live.run.lastStep) live.goal = live.run.head.step
}

/** What taking hold and pressing do. A hand that holds already only moves. */
export const obeyHand = (live: Live, message: Extract<ToWorker, { type: 'hold' | 'press' }>, clockMs: number): void => {
  const { share } = message
  if (message.type === 'hold' && live.hand) {
    live.hand.share = share
    return
  }
  if (message.type === 'hold') {
    stand(live)
    live.taken = null
    live.hand = { madeShare: share, share, part: 0, movedAtMs: clockMs }
    return
  }
  takeOver(live)
  live.hand = null
  for (let k = 0; k < message.steps; k++) add(live, share)
}

/** The hand gives up what it has made since it took hold: the run is as it was, and stands where it was taken. */
export const giveUp = (live: Live): void => {
  live.hand = null
  if (live.taken === null) return
  giveRunBack(live.run, live.taken)
  live.goal = live.taken.step
  live.taken = null
  live.handUntold = false
  voidLater(live)
}

/** Makes again what a hand made before, from where the run stands. */
export const remake = (live: Live, path: Float64Array): void => {
  takeOver(live)
  for (const share of path) add(live, share)
}
