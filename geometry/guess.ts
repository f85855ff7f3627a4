import type { Pose } from './pose.ts'

/** The part of a pose that a balance finds. */
export type Guess = Pick<Pose, 'depthSlope' | 'turnSlope'>

/**
 * Where the next pose will be, from the last two periods: a grind repeats itself, period by period, but for what it wears
 * away, which changes slowly. A good guess halves the passes of a balance; which balance is found it changes by no more than
 * the balance's tolerance.
 */
export interface Guesses {
  readonly depth: Track
  readonly turn: Track
  readonly guess: { depthSlope: number; turnSlope: number }
}

/** One figure of the pose over time. */
interface Track {
  /** What each step of the period is expected to bring when it comes next. */
  readonly expected: Float64Array
  /** What each step of the period brought last. */
  readonly found: Float64Array
  /** How far the last step was off what was expected of it; in the first period, how far it went. */
  miss: number
  last: number
}

const newTrack = (period: number): Track => ({
  expected: new Float64Array(period),
  found: new Float64Array(period),
  miss: 0,
  last: 0,
})

export const newGuesses = (period: number): Guesses => ({
  depth: newTrack(period),
  turn: newTrack(period),
  guess: { depthSlope: 0, turnSlope: 0 },
})

const expect = ({ expected, miss, last }: Track, step: number): number =>
  (step < expected.length ? last : (expected[step % expected.length] as number)) + miss

/** Expected next time: as much more as it has changed since last time; nothing is known of a change in the first period. */
const note = (track: Track, step: number, value: number): void => {
  const { expected, found } = track
  const period = expected.length
  const k = step % period
  track.miss = step === 0 ? 0 : value - (step < period ? track.last : (expected[k] as number))
  expected[k] = step < period ? value : 2 * value - (found[k] as number)
  found[k] = value
  track.last = value
}

/** The pose to start from at a step. */
export const guessPose = ({ depth, turn, guess }: Guesses, step: number): Guess => {
  guess.depthSlope = expect(depth, step)
  guess.turnSlope = expect(turn, step)
  return guess
}

/** Keeps the pose found at a step. */
export const notePose = ({ depth, turn }: Guesses, pose: Guess, step: number): void => {
  note(depth, step, pose.depthSlope)
  note(turn, step, pose.turnSlope)
}

const copyTrack = (from: Track, to: Track): void => {
  to.expected.set(from.expected)
  to.found.set(from.found)
  to.miss = from.miss
  to.last = from.last
}

/** Copies everything that the next guess depends on. @returns the copy */
export const copyGuesses = (from: Guesses, to: Guesses): Guesses => {
  copyTrack(from.depth, to.depth)
  copyTrack(from.turn, to.turn)
  return to
}
