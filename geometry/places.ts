import type { MeasureNotice } from './measure.ts'

/** Something that stands at a place across the iron, from its middle. */
interface Placed {
  readonly uMm: number
}

/** Fewer places than these do not tell a straightedge's offset, tilt and curve apart. */
export const FEWEST_PLACES = 3
/** Nearer to each other than this, places at the bench are one: no hand sets a gauge more finely (mm). */
const ONE_PLACE_MM = 0.1
/** Places as far apart as this were not written as the same: units of the inch leave less by rounding (mm). */
const SAME_MM = 1e-6

const countedApart = (placed: readonly Placed[], apartMm: number): number => {
  let [count, lastMm] = [0, Number.NEGATIVE_INFINITY]
  for (const uMm of placed.map((point) => point.uMm).sort((a, b) => a - b)) {
    if (uMm - lastMm < apartMm) continue
    count++
    lastMm = uMm
  }
  return count
}

/** @returns whether points stand at places enough for a curve, however many they are */
export const placesEnough = (placed: readonly Placed[]): boolean => countedApart(placed, ONE_PLACE_MM) >= FEWEST_PLACES

/** @returns what to say of points at a place that another has already: the best curve goes by the mean of their gaps */
export const placesAgain = (placed: readonly Placed[]): readonly MeasureNotice[] => {
  const again = placed.length - countedApart(placed, SAME_MM)
  return again > 0 ? [{ code: 'placesAgain', params: { again, points: placed.length } }] : []
}

/** @returns whether places run one way, left to right or right to left */
export const inOrder = (placed: readonly Placed[]): boolean => {
  const steps = placed.slice(1).map(({ uMm }, i) => uMm - (placed[i] as Placed).uMm)
  return steps.every((step) => step >= 0) || steps.every((step) => step <= 0)
}
