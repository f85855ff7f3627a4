import { fixed } from '../../../main/contract/figures.ts'

/** A moment taken with the watch: what it showed, and the sweep the grind stood at. */
export interface Lap {
  readonly ms: number
  readonly sweep: number
}

/** A stopwatch that keeps two times: that of the wall, and the grind's own by its sweeps. */
export interface Watch {
  /** When it was last started, by a clock that never goes back (ms); null: it stands. */
  readonly startedMs: number | null
  /** What it counted before that. */
  readonly countedMs: number
  /** The sweep it was first started at; null: not yet. */
  readonly fromSweep: number | null
  readonly laps: readonly Lap[]
}

export const atNought: Watch = { startedMs: null, countedMs: 0, fromSweep: null, laps: [] }

/** Most laps that are kept; the oldest leave first. */
export const MOST_LAPS = 50

/** @returns what it shows at a time of the clock */
export const shownMs = ({ startedMs, countedMs }: Watch, nowMs: number): number =>
  countedMs + (startedMs === null ? 0 : Math.max(nowMs - startedMs, 0))

/** Starts it, or starts it again where it stood. */
export const started = (watch: Watch, nowMs: number, sweep: number): Watch =>
  watch.startedMs === null ? { ...watch, startedMs: nowMs, fromSweep: watch.fromSweep ?? sweep } : watch

export const stopped = (watch: Watch, nowMs: number): Watch => ({
  ...watch,
  startedMs: null,
  countedMs: shownMs(watch, nowMs),
})

/** Takes a moment, running or not. */
export const lapped = (watch: Watch, nowMs: number, sweep: number): Watch => ({
  ...watch,
  laps: [...watch.laps, { ms: shownMs(watch, nowMs), sweep }].slice(-MOST_LAPS),
})

/** The grind's own time between two of its moments; going back in it counts as going on. */
export const grindMs = (fromSweep: number, toSweep: number, sweepSeconds: number): number =>
  Math.abs(toSweep - fromSweep) * sweepSeconds * 1000

/** A time cut, not rounded, to tenths, as a watch shows it. */
export interface Shown {
  readonly minutes: number
  /** Two digits, the language's decimal mark, one digit. */
  readonly seconds: string
}

/** @returns minutes and seconds. @param ms not negative */
export const shownAs = (ms: number): Shown => {
  const tenths = Math.floor(ms / 100 + 1e-6)
  const rest = tenths % 600
  return {
    minutes: Math.floor(tenths / 600),
    seconds: fixed(rest / 10, 1).padStart(4, '0'),
  }
}
