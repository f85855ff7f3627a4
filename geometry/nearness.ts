/**
 * How near an edge comes to a wanted curve. The measure: the greatest deviation over the width, edge and curve laid on each
 * other with the best offset along v (so half of what a straight pair of bounds is apart). No turn is taken out: skew counts.
 */
export const deviationMm = (edgeMm: ArrayLike<number>, aimMm: ArrayLike<number>, scale = 1): number => {
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < aimMm.length; i++) {
    const apart = scale * (edgeMm[i] as number) - (aimMm[i] as number)
    least = Math.min(least, apart)
    most = Math.max(most, apart)
  }
  return (most - least) / 2
}

/** An edge's nearness when its relief may be scaled, as turning all stops out or in scales it. */
export interface Nearness {
  readonly scale: number
  readonly deviationMm: number
}

const spanMm = (values: ArrayLike<number>): number => {
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  for (let i = 0; i < values.length; i++) {
    least = Math.min(least, values[i] as number)
    most = Math.max(most, values[i] as number)
  }
  return most - least
}

/** Furthest that the best scale lies from the ratio of both spans: beyond, the shapes have nothing in common. */
const FURTHEST = 2
/** Thirds taken off: (2/3)^50 is 1e-9, below any figure here. */
const THIRDS = 50

/** The scale that brings an edge nearest to a curve: the deviation is convex in it, so the search by thirds finds the one least. 1 where either is straight. */
export const nearestScale = (edgeMm: ArrayLike<number>, aimMm: ArrayLike<number>): Nearness => {
  const ratio = spanMm(aimMm) / spanMm(edgeMm)
  if (!(ratio > 0 && Number.isFinite(ratio))) return { scale: 1, deviationMm: deviationMm(edgeMm, aimMm) }
  let low = ratio / FURTHEST
  let high = ratio * FURTHEST
  for (let k = 0; k < THIRDS; k++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3]
    if (deviationMm(edgeMm, aimMm, a) <= deviationMm(edgeMm, aimMm, b)) high = b
    else low = a
  }
  const scale = (low + high) / 2
  return { scale, deviationMm: deviationMm(edgeMm, aimMm, scale) }
}
