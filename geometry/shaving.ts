import { behindAt, type Profile } from './profile.ts'

/** The shaving that an edge takes. */
export interface Cut {
  readonly widthMm: number
  readonly areaMm2: number
  readonly thickestMm: number
  /** Where it begins and ends, from the iron's middle; both 0 where nothing is cut. */
  readonly leftMm: number
  readonly rightMm: number
}

/** Width and area between two neighbouring points of the edge, thickness straight between them. */
const slice = (stepMm: number, a: number, b: number): readonly [widthMm: number, areaMm2: number] => {
  if (a >= 0 && b >= 0) return [stepMm, (stepMm * (a + b)) / 2]
  const top = Math.max(a, b)
  if (top <= 0) return [0, 0]
  const cutMm = (stepMm * top) / Math.abs(a - b)
  return [cutMm, (cutMm * top) / 2]
}

/** The shaving of an edge let down by a depth: depth less what the edge lies behind, seen by the wood through the sine of the seat. */
export const cutOf = ({ uMm, behindMm }: Profile, depthMm: number, seatSine: number): Cut => {
  const thickness = behindMm.map((v) => depthMm - v * seatSine)
  let widthMm = 0
  let areaMm2 = 0
  let leftMm: number | null = null
  let rightMm = 0
  for (let i = 1; i < uMm.length; i++) {
    const [from, to] = [uMm[i - 1] as number, uMm[i] as number]
    const [a, b] = [thickness[i - 1] as number, thickness[i] as number]
    const [cutMm, sliceMm2] = slice(to - from, a, b)
    widthMm += cutMm
    areaMm2 += sliceMm2
    if (cutMm === 0) continue
    leftMm ??= a >= 0 ? from : to - cutMm
    rightMm = b >= 0 ? to : from + cutMm
  }
  return { widthMm, areaMm2, thickestMm: Math.max(0, ...thickness), leftMm: leftMm ?? 0, rightMm }
}

/** How deep the corners stand in the wood (mm), 0 where they do not: each leaves a step on a board that reaches so far. */
export const cornersIn = (
  { uMm, behindMm }: Profile,
  depthMm: number,
  seatSine: number,
  boardMm: number,
): { readonly leftMm: number; readonly rightMm: number } => {
  const stepAt = (u: number, behind: number) =>
    Math.abs(u) < boardMm / 2 ? Math.max(0, depthMm - behind * seatSine) : 0
  return {
    leftMm: stepAt(uMm[0] as number, behindMm[0] as number),
    rightMm: stepAt(uMm.at(-1) as number, behindMm.at(-1) as number),
  }
}

/**
 * Fills in how far the board's surface lies below where it was, after passes side by side that go equally deep.
 * @param edge as a `Profile`, places rising
 * @param offsetsMm where the iron's middle went, from the board's middle
 * @param placesMm places across the board, rising, as many as `out` holds
 */
export const fillBoard = (
  out: Float64Array,
  { uMm, behindMm }: { readonly uMm: ArrayLike<number>; readonly behindMm: ArrayLike<number> },
  offsetsMm: readonly number[],
  depthMm: number,
  seatSine: number,
  placesMm: ArrayLike<number>,
): void => {
  const [first, last] = [uMm[0] as number, uMm[uMm.length - 1] as number]
  out.fill(0)
  for (let pass = 0; pass < offsetsMm.length; pass++) {
    let next = 0
    for (let k = 0; k < out.length; k++) {
      const u = (placesMm[k] as number) - (offsetsMm[pass] as number)
      if (u < first || u > last) continue
      while ((uMm[next] as number) < u) next++
      const behind = next === 0 ? (behindMm[0] as number) : between(uMm, behindMm, next, u)
      out[k] = Math.max(out[k] as number, depthMm - behind * seatSine)
    }
  }
}

/** Straight between two points of the edge. @param next the one at or after `u` */
const between = (uMm: ArrayLike<number>, behindMm: ArrayLike<number>, next: number, u: number): number => {
  const share = (u - (uMm[next - 1] as number)) / ((uMm[next] as number) - (uMm[next - 1] as number))
  return (behindMm[next - 1] as number) * (1 - share) + (behindMm[next] as number) * share
}

/** Points looked at from one pass to the next. */
const RIDGE_POINTS = 200

/**
 * Height of the ridges that passes a step apart leave: the lowest of all passes at each place, its highest place. For an
 * edge alike left and right that is its height half a step out.
 * @returns null where the step is wider than the edge and a strip stays uncut
 */
export const ridgeMm = (profile: Profile, stepMm: number, seatSine: number): number | null => {
  const left = profile.uMm[0] as number
  const widthMm = (profile.uMm.at(-1) as number) - left
  if (!(stepMm > 0) || stepMm > widthMm) return null
  let highest = 0
  for (let k = 0; k < RIDGE_POINTS; k++) {
    let lowest = Number.POSITIVE_INFINITY
    for (let u = left + (k * stepMm) / RIDGE_POINTS; u <= left + widthMm; u += stepMm)
      lowest = Math.min(lowest, behindAt(profile, u))
    highest = Math.max(highest, lowest)
  }
  return highest * seatSine
}
