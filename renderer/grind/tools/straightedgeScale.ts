import type { Rest } from '../../../geometry/straightedge.ts'
import { acrossPx, type CurveScale } from '../curves.ts'
import { acrossScale, depthScale } from '../glassScale.ts'
import type { PointRow } from '../pointRow.ts'

export const HEIGHT_PX = 224
/** The straightedge's own height, and room above it when it stands highest (px). */
export const EDGE_PX = 11
const ABOVE_PX = 6
/** Iron below the deepest corner, where the leaves are written (px). */
export const FOOT_PX = 42
/** Of the widest gape so much lies over the foremost point at most: on an arc three quarters, on a roof half. */
const OVER_SHARE = 0.75
/** How far the straightedge stands out at both ends (px). */
const BEYOND_PX = 8

/** How the straightedge is drawn; the same for every tilt, so that a gap is seen to grow. */
export interface StraightedgeScale extends CurveScale {
  readonly acrossFactor: number
  readonly depthFactor: number
}

/** @param gapeMm the widest gape that is to come, the straightedge rocked onto a corner */
export const straightedgeScale = (widthMm: number, gapeMm: number, plotPx: number): StraightedgeScale => {
  const across = acrossScale(widthMm, plotPx)
  const depth = depthScale(gapeMm, HEIGHT_PX - ABOVE_PX - EDGE_PX - FOOT_PX)
  return {
    acrossFactor: across.factor,
    depthFactor: depth.factor,
    leftMm: -widthMm / 2,
    acrossPxPerMm: across.pxPerMm,
    depthPxPerMm: depth.pxPerMm,
    topPx: ABOVE_PX + EDGE_PX + OVER_SHARE * gapeMm * depth.pxPerMm,
  }
}

/** Two contacts this near are one to the eye (mm). */
const ONE_TOUCH_MM = 1

/** Whether a straightedge touches at two places. */
export const touchesTwice = ({ firstMm, lastMm }: Rest): boolean => lastMm - firstMm > ONE_TOUCH_MM

/** @returns where the straightedge's lower side stands over a place across (px). @param foremostMm back of the edge's foremost point, the drawing's zero */
export const restYPx = ({ topPx, depthPxPerMm }: CurveScale, rest: Rest, uMm: number, foremostMm: number): number =>
  topPx + (rest.atZeroMm + rest.slope * uMm - foremostMm) * depthPxPerMm

/** Adds the outline of the straightedge. */
export const addStraightedge = (
  row: Pick<PointRow, 'add'>,
  rest: Rest,
  foremostMm: number,
  scale: CurveScale,
): void => {
  const beyondMm = BEYOND_PX / scale.acrossPxPerMm
  const fromMm = scale.leftMm - beyondMm
  const toMm = -scale.leftMm + beyondMm
  const fromYPx = restYPx(scale, rest, fromMm, foremostMm)
  const toYPx = restYPx(scale, rest, toMm, foremostMm)
  row.add(acrossPx(scale, fromMm), fromYPx)
  row.add(acrossPx(scale, toMm), toYPx)
  row.add(acrossPx(scale, toMm), toYPx - EDGE_PX)
  row.add(acrossPx(scale, fromMm), fromYPx - EDGE_PX)
}
