import { median } from './fit.ts'

/** What one grind took, as the bench noted it. */
export interface RemovalNote {
  readonly widthMm: number
  readonly thicknessMm: number
  /** How far the edge's middle went back. */
  readonly setBackMm: number
  /** Relief before and after: the corners went back further by their difference. */
  readonly reliefBeforeMm: number
  readonly reliefAfterMm: number
  readonly sweeps: number
  /** Null: not noted. */
  readonly minutes: number | null
}

/** A station's wheel, by the grinds that were noted. */
export interface Removal {
  /** Middle value, and the spread of one grind about it. */
  readonly perSweepMm3: number
  readonly spreadMm3: number
  /** Middle value; null: no minutes were noted. */
  readonly perMinuteMm3: number | null
  readonly sweepSeconds: number | null
  readonly grinds: number
}

/**
 * How long a sweep takes where nobody has timed one (s). It goes one way, some 50 mm of load across the edge, which an unhurried
 * hand does in about a second. Playing at the middle speed and the blade held by hand count by it too, so that the program's
 * times agree until the bench log has others.
 */
export const GUESSED_SWEEP_SECONDS = 1

/** An arc's corners lie back by its relief and its mean by a third of it. */
const ARC_MEAN = 1 / 3
/** Median absolute deviation of a normal spread, as a share of its sd. */
const MAD_SHARE = 0.6745
const SECONDS = 60

/**
 * Volume of a grind: the whole bevel goes back along the blade, so it is width x thickness x mean set-back. 57 x 3.2 mm set back by
 * 0.1 mm in the middle and 0.4 mm at the corners, straight before: 57 x 3.2 x (0.1 + 0.3 / 3) = 36.48 mm^3.
 */
export const removedMm3 = (note: RemovalNote): number =>
  note.widthMm * note.thicknessMm * (note.setBackMm + (note.reliefAfterMm - note.reliefBeforeMm) * ARC_MEAN)

/** @returns null without a grind that took anything */
export const removalOf = (notes: readonly RemovalNote[]): Removal | null => {
  const told = notes.filter((note) => note.sweeps > 0 && removedMm3(note) > 0)
  if (told.length === 0) return null
  const perSweep = told.map((note) => removedMm3(note) / note.sweeps)
  const middle = median(perSweep)
  const timed = told.filter(
    (note): note is RemovalNote & { minutes: number } => note.minutes !== null && note.minutes > 0,
  )
  const perMinute = timed.map((note) => removedMm3(note) / note.minutes)
  const seconds = timed.map((note) => (note.minutes * SECONDS) / note.sweeps)
  return {
    perSweepMm3: middle,
    spreadMm3: median(perSweep.map((each) => Math.abs(each - middle))) / MAD_SHARE,
    perMinuteMm3: timed.length === 0 ? null : median(perMinute),
    sweepSeconds: timed.length === 0 ? null : median(seconds),
    grinds: told.length,
  }
}
