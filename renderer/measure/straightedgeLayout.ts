import { type Place, steps } from '../glass/glassLayout.ts'
import type { Leaves } from './reading.ts'

/** A sketch of a straightedge on an edge (px): the curve is far too deep, so that the gaps can be seen. */
export interface StraightedgeLayout {
  readonly curve: readonly Place[]
  /** The side of the straightedge that lies on the edge. */
  readonly rule: readonly [Place, Place]
  /** From the edge up to the straightedge; corners first, then halfway. */
  readonly gaps: readonly { readonly edge: Place; readonly rule: Place }[]
  readonly touches: Place
  readonly floorPx: number
}

/** Drop of the corners in the sketch, and the iron below them, as shares of the half width. */
const DROP_SHARE = 0.16
const BODY_SHARE = 0.34
/** How far the straightedge stands out beyond the iron. */
const BEYOND_SHARE = 0.1
/** Points on the curve. */
const POINTS = 40
/** Where leaves are tried, as shares of the half width; at a corner they are slid in from it. */
const TRIED = [-0.96, 0.96, -0.5, 0.5] as const

/** Room above the highest point of the straightedge (px), its own thickness included. */
const ABOVE_PX = 16

/**
 * @param touch where the straightedge touches, -1 at the left corner to 1 at the right; 0: on the crown of a curve alike
 * on both sides. Along an arc s x^2 it is then the tangent there, s touch (2 x - touch).
 */
export const straightedgeLayout = (touch: number, middlePx: number, halfPx: number): StraightedgeLayout => {
  const dropPx = DROP_SHARE * halfPx
  const out = 1 + BEYOND_SHARE
  const topPx = ABOVE_PX + dropPx * Math.abs(touch) * (2 * out + Math.abs(touch))
  const curveAt = (x: number): Place => [middlePx + x * halfPx, topPx + dropPx * x * x]
  const ruleAt = (x: number): Place => [middlePx + x * halfPx, topPx + dropPx * touch * (2 * x - touch)]
  return {
    curve: steps(POINTS).map(curveAt),
    rule: [ruleAt(-out), ruleAt(out)],
    gaps: TRIED.map((x) => ({ edge: curveAt(x), rule: ruleAt(x) })),
    touches: curveAt(touch),
    floorPx: topPx + dropPx + BODY_SHARE * halfPx,
  }
}

/** @returns where on an arc a straightedge touched that leaves these at its corners: s (1 + t)^2 left, s (1 - t)^2 right */
export const touchOf = ({ leftMm, rightMm }: Leaves): number => {
  const [left, right] = [Math.sqrt(leftMm ?? 0), Math.sqrt(rightMm ?? 0)]
  return left + right === 0 ? 0 : (left - right) / (left + right)
}
