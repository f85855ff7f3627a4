/** An edge by its points across; entry `i * stride` of `vMm` belongs to `uMm[i]`, + is steel gone. */
export interface EdgeLine {
  readonly uMm: ArrayLike<number>
  readonly vMm: ArrayLike<number>
  readonly stride: number
}

/** Where two edges lie furthest apart, each counted from its own foremost point. */
export interface Deviation {
  /** + where the second lies further back. */
  readonly byMm: number
  /** Place across, + right of the middle. */
  readonly atUMm: number
  /** How far the first lies back there. */
  readonly behindMm: number
}

/** Edges that lie nearer than this all along are the same: half of what is written (mm). */
export const SAME_EDGE_MM = 0.0005

/** Of deviations that differ by less than this the leftmost is told (mm): rounding must not throw the place from side to side. */
const AS_FAR_MM = 1e-9

const foremostOf = ({ uMm, vMm, stride }: EdgeLine): number => {
  let foremost = Number.POSITIVE_INFINITY
  for (let i = 0; i < uMm.length; i++) foremost = Math.min(foremost, vMm[i * stride] as number)
  return foremost
}

/** v at u, straight between points. @param u between the corners */
const heightAt = ({ uMm, vMm, stride }: EdgeLine, u: number): number => {
  let low = 0
  let high = uMm.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if ((uMm[middle] as number) <= u) low = middle
    else high = middle
  }
  const [from, to] = [uMm[low] as number, uMm[high] as number]
  const share = (u - from) / (to - from)
  return (vMm[low * stride] as number) * (1 - share) + (vMm[high * stride] as number) * share
}

/**
 * Both edges are straight between their points, so they lie furthest apart at a point of one or the other.
 * @returns the greatest deviation over the width that both have
 */
export const deviationOf = (one: EdgeLine, other: EdgeLine): Deviation => {
  const leftMm = Math.max(one.uMm[0] as number, other.uMm[0] as number)
  const rightMm = Math.min(one.uMm[one.uMm.length - 1] as number, other.uMm[other.uMm.length - 1] as number)
  const [oneFrom, otherFrom] = [foremostOf(one), foremostOf(other)]
  let [byMm, atUMm, behindMm] = [0, 0, 0]
  for (const line of [one, other]) {
    for (let i = 0; i < line.uMm.length; i++) {
      const u = line.uMm[i] as number
      if (u < leftMm || u > rightMm) continue
      const behind = heightAt(one, u) - oneFrom
      const by = heightAt(other, u) - otherFrom - behind
      if (Math.abs(by) <= Math.abs(byMm) + AS_FAR_MM) continue
      byMm = by
      atUMm = u
      behindMm = behind
    }
  }
  return { byMm, atUMm, behindMm }
}
