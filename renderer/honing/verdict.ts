/** Within a tenth the curve is kept. */
const KEPT_SHARE = 0.1
/** A change of relief below this shows on no bench (mm). */
const NO_CHANGE_MM = 0.005
/** Relief below this is no curve to keep: no leaf tells it from straight (mm). */
const STRAIGHT_MM = 0.02

export type Verdict = 'straight' | 'kept' | 'flatter' | 'deeper'

/** @returns what strokes do to an edge, by its relief before and after (mm) */
export const verdictOf = (beforeMm: number, afterMm: number): Verdict => {
  if (beforeMm < STRAIGHT_MM) return 'straight'
  if (Math.abs(afterMm - beforeMm) < Math.max(KEPT_SHARE * beforeMm, NO_CHANGE_MM)) return 'kept'
  return afterMm < beforeMm ? 'flatter' : 'deeper'
}
