/** Steel seen along its surface: places in rising order, and at each how far back the steel begins, from any zero (mm). */
export interface SteelLine {
  readonly atMm: ArrayLike<number>
  readonly backMm: ArrayLike<number>
}

/** A straightedge lying on steel: back = atZeroMm + slope x place; it touches from `firstMm` to `lastMm`. */
export interface Rest {
  readonly slope: number
  readonly atZeroMm: number
  readonly firstMm: number
  readonly lastMm: number
}

/** How far a straightedge can rock: its slope pressed down at the first place, balanced, and at the last. */
export interface Rock {
  readonly first: number
  readonly balanced: number
  readonly last: number
}

/** Nearer than this is touching: rounding of places some tens of mm wide leaves less (mm). */
const TOUCH_MM = 1e-9

const slopeBetween = ({ atMm, backMm }: SteelLine, i: number, k: number): number =>
  ((backMm[k] as number) - (backMm[i] as number)) / ((atMm[k] as number) - (atMm[i] as number))

/**
 * The straightedge lies on the convex hull of the steel. Pressed down at an end it lies on that end and on the point of the
 * hull next to it; balanced it gapes alike at both ends, so it lies along the line between them. The three are equal
 * where it cannot rock: on a flat, on a hollow.
 * @param line two points or more
 */
export const rockOf = (line: SteelLine): Rock => {
  const end = line.atMm.length - 1
  let first = Number.POSITIVE_INFINITY
  let last = Number.NEGATIVE_INFINITY
  for (let i = 1; i <= end; i++) {
    first = Math.min(first, slopeBetween(line, 0, i))
    last = Math.max(last, slopeBetween(line, i - 1, end))
  }
  return { first, balanced: slopeBetween(line, 0, end), last }
}

/** The straightedge at a slope, let down until it touches. @param slope within the rock, else it would not stay */
export const restAt = ({ atMm, backMm }: SteelLine, slope: number): Rest => {
  const over = (i: number): number => (backMm[i] as number) - slope * (atMm[i] as number)
  let atZeroMm = Number.POSITIVE_INFINITY
  for (let i = 0; i < atMm.length; i++) atZeroMm = Math.min(atZeroMm, over(i))
  let [from, to] = [0, atMm.length - 1]
  while (over(from) - atZeroMm > TOUCH_MM) from++
  while (over(to) - atZeroMm > TOUCH_MM) to--
  return { slope, atZeroMm, firstMm: atMm[from] as number, lastMm: atMm[to] as number }
}

/**
 * Where a straightedge comes to lie under a hand.
 * @param press -1 pressed down at the first place, 0 balanced, 1 at the last; between, held that share of the way
 */
export const restUnder = (line: SteelLine, press: number): Rest => {
  const { first, balanced, last } = rockOf(line)
  return restAt(line, balanced + Math.abs(press) * ((press < 0 ? first : last) - balanced))
}

/** Steel at a place, straight between points; beyond the ends as at the end. */
const backAt = ({ atMm, backMm }: SteelLine, placeMm: number): number => {
  const end = atMm.length - 1
  let k = 1
  while (k < end && (atMm[k] as number) < placeMm) k++
  const [before, after] = [atMm[k - 1] as number, atMm[k] as number]
  const share = Math.min(Math.max((placeMm - before) / (after - before), 0), 1)
  return (backMm[k - 1] as number) + share * ((backMm[k] as number) - (backMm[k - 1] as number))
}

/** @returns the gap under a straightedge at a place (mm), never negative */
export const gapUnder = (line: SteelLine, { slope, atZeroMm }: Rest, placeMm: number): number =>
  Math.max(backAt(line, placeMm) - (atZeroMm + slope * placeMm), 0)

/** Whether a leaf goes under where the gap is so wide. A leaf of no thickness is none. */
export const goesUnder = (gapMm: number, leafMm: number): boolean => leafMm > 0 && leafMm <= gapMm + TOUCH_MM

/** @returns the thickest leaf of a set in equal steps that goes under, 0 where not even the thinnest does (mm) */
export const thickestLeafMm = (gapMm: number, stepMm: number): number =>
  Math.floor((gapMm + TOUCH_MM) / stepMm) * stepMm
