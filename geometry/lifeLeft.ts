import { median } from './fit.ts'

/** How many grinds an iron has left, and how far that can be trusted. */
export interface LifeLeft {
  readonly grinds: number
  /** Nineteen of twenty irons should last at least and at most so many. */
  readonly from: number
  readonly to: number
  readonly perGrindMm: number
}

/** A length is measured with a rule, to this (mm, sd). */
const LENGTH_SD_MM = 0.5
/** One grind takes what another did to within this share at best, however alike those noted were. */
const LEAST_SPREAD = 0.15
/** With fewer noted grinds than this their own spread says little, so a wide one is taken: from half as much to half as much again. */
const FEW = 4
const FEW_SPREAD = 0.5
/** What the model says a grind took hangs on what is guessed of wheel and steel, and may be out by this share (sd). */
const MODEL_SD = 0.5
/** Median absolute deviation of a normal spread, as a share of its sd. */
const MAD_SHARE = 0.6745
/** Nineteen of twenty. */
const SDS = 2
/** However unsure, no grind takes less than this share of what one took. */
const LEAST_SHARE = 1 / 3

const spreadOf = (takenMm: readonly number[], middleMm: number): number => {
  const seen = median(takenMm.map((each) => Math.abs(each - middleMm))) / MAD_SHARE / middleMm
  return Math.max(LEAST_SPREAD, takenMm.length < FEW ? FEW_SPREAD : seen)
}

/** More figures than two would be a promise that none of this can keep. */
const twoFigures = (grinds: number, round: (value: number) => number): number => {
  const step = 10 ** Math.max(0, Math.floor(Math.log10(Math.max(1, grinds))) - 1)
  return round(grinds / step) * step
}

/**
 * Length left over what a grind takes in the middle of the edge. The doubt adds up from the mean of the noted grinds
 * (spread / sqrt n), from the grinds to come (spread / sqrt N), from the length, and from the model where it was asked.
 * Length 20, four grinds of 0.1: N = 200; doubt sqrt(0.075^2 + 0.15^2 / 200 + 0.025^2) = 0.080, so from 200 / 1.16 to 200 / 0.84, or 170 to 240.
 *
 * @param lengthLeftMm what may still be ground away
 * @param takenMm what each noted grind took, 0 or more
 * @param by whether that was measured at the bench or said by the model
 * @returns null where nothing was noted, or grinds took nothing
 */
export const lifeLeft = (lengthLeftMm: number, takenMm: readonly number[], by: 'bench' | 'model'): LifeLeft | null => {
  const perGrindMm = takenMm.length === 0 ? 0 : median(takenMm)
  if (!(perGrindMm > 0)) return null
  const grinds = Math.max(0, lengthLeftMm) / perGrindMm
  if (grinds < 1) return { grinds: 0, from: 0, to: 1, perGrindMm }
  const spread = spreadOf(takenMm, perGrindMm)
  const doubt = Math.hypot(
    spread / Math.sqrt(takenMm.length),
    spread / Math.sqrt(grinds),
    LENGTH_SD_MM / lengthLeftMm,
    by === 'model' ? MODEL_SD : 0,
  )
  return {
    grinds: twoFigures(grinds, Math.round),
    from: twoFigures(grinds / (1 + SDS * doubt), Math.floor),
    to: twoFigures(grinds / Math.max(LEAST_SHARE, 1 - SDS * doubt), Math.ceil),
    perGrindMm,
  }
}
