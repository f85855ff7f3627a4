/** A guess nearer than this (mm) is right: no leaf tells it from what came. */
const RIGHT_MM = 0.02
/** A guess within this share of what came is near: it would have chosen the right turns to the nearest quarter. */
const NEAR_SHARE = 0.25

/** How a guess compares with what came. `more`: more came than was said. */
export type Verdict = 'right' | 'near' | 'more' | 'less'

/** @param saidMm what was said @param cameMm what the engine ground */
export const verdictOf = (saidMm: number, cameMm: number): Verdict => {
  const offMm = Math.abs(cameMm - saidMm)
  if (offMm <= RIGHT_MM) return 'right'
  if (offMm <= NEAR_SHARE * cameMm) return 'near'
  return cameMm > saidMm ? 'more' : 'less'
}

/** Both corners as said, after so many sweeps. */
export interface Guess {
  readonly sweep: number
  readonly leftMm: number
  readonly rightMm: number
}

/** Which corner was thought to come further back, and which did: one of the two that a beginner confuses. */
export const sidesMistaken = (said: Guess, came: Omit<Guess, 'sweep'>): boolean => {
  const saidMore = said.leftMm - said.rightMm
  const cameMore = came.leftMm - came.rightMm
  return Math.abs(cameMore) > RIGHT_MM && Math.abs(saidMore) > RIGHT_MM && saidMore * cameMore < 0
}
