/**
 * How far the fingers may reach: the knack in one number. While no stop carries moment the pressure is centred where the
 * fingers press, so even wear over the width can be kept up only if the places of the load are no wider spread than the
 * width itself: for every K and either side
 *
 *     E[max(0, +-reach f - K)]  <=  (w/2 - K)^2 / (2 w)
 *
 * (the load's place below the uniform distribution in convex order). Up to that reach a straight edge stays straight however
 * free the fixture; beyond it the corners wear faster until the stops take the moment.
 * Independent check: sinusoid pi w / 8, triangle w / 2, three-position w (1 - p) / 2 (tests/geometry).
 */
const holds = (path: Float64Array, widthMm: number, reachMm: number): boolean => {
  for (let k = 0; k < LEVELS; k++) {
    const level = (widthMm / 2) * (k / LEVELS)
    const most = (widthMm / 2 - level) ** 2 / (2 * widthMm)
    if (beyond(path, reachMm, level) > most || beyond(path, -reachMm, level) > most) return false
  }
  return true
}

/** Levels K at which the law is tried; between two of them it can be broken by no more than a thousandth of the width. */
const LEVELS = 64

const beyond = (path: Float64Array, reachMm: number, level: number): number => {
  let sum = 0
  for (const f of path) sum += Math.max(0, reachMm * f - level)
  return sum / path.length
}

/** Halvings of the bracket: from twice the width to a thousandth of a micrometre. */
const HALVINGS = 28

/** @returns the reach (mm) up to which a straight edge stays straight, for a path's f over one period; at most the width */
export const reachLimitMm = (path: Float64Array, widthMm: number): number => {
  let low = 0
  let high = widthMm
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2
    if (holds(path, widthMm, middle)) low = middle
    else high = middle
  }
  return low
}

/**
 * How fast the corners fall behind beyond the limit, before a stop is met, where the law is broken at K = 0.
 * @returns mm of relief for each mm^3 taken off; 0 within the limit
 */
export const reliefPerMm3 = (path: Float64Array, reachMm: number, widthMm: number, thicknessMm: number): number => {
  let sum = 0
  for (const f of path) sum += Math.abs(f)
  const excess = (reachMm * sum) / path.length - widthMm / 4
  return Math.max(0, (24 * excess) / (widthMm * widthMm * thicknessMm))
}
