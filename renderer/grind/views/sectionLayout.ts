import type { SetUp } from '../../../geometry/setUp.ts'
import { extentOf, type Layout, layoutOf } from '../../setUp/layout.ts'
import { BEYOND_BAR_MM } from '../../setUp/outlines.ts'
import type { Point, Triangle } from '../../setUp/triangle.ts'
import { factorFor, PX_PER_MM } from '../../ui/scale.ts'
import type { Box } from '../../ui/useBox.ts'

/** The section along the wheel laid out: the machine at the left, its edge magnified at the right. */
export interface SectionPlan {
  readonly machine: Layout
  /** The edge in both directions alike magnified, in a box of its own. */
  readonly near: Layout
  readonly nearFactor: number
  readonly nearBox: Box & { readonly leftPx: number; readonly topPx: number }
}

/** Factors for the edge, which is always larger than life. */
const NEAR = [1, 2, 5, 10, 20, 50] as const
/** The bevel takes at most this share of its box. */
const BEVEL_SHARE = 0.62
/** The machine takes this share of the width where the edge stands beside it. */
const MACHINE_SHARE = 0.5
/** Room over the edge's box for its scale bar (px). */
const BAR_PX = 26
/** The set-up drawing is laid out without figures beside it below this (px). */
const NARROW_PX = 959

/** @param chordMm from edge to heel @param middle of the bevel, where the magnified drawing is centred */
export const sectionPlan = (
  triangle: Triangle,
  { wheelRadiusMm: radiusMm, projectionMm }: Pick<SetUp, 'wheelRadiusMm' | 'projectionMm'>,
  chordMm: number,
  middle: Point,
  { widthPx, heightPx }: Box,
): SectionPlan => {
  const machineBox = { widthPx: Math.min(widthPx * MACHINE_SHARE, NARROW_PX), heightPx }
  const machine = layoutOf(extentOf(triangle, radiusMm, projectionMm + BEYOND_BAR_MM), machineBox)
  const leftPx = widthPx * MACHINE_SHARE + 8
  const nearBox = { leftPx, topPx: BAR_PX, widthPx: widthPx - leftPx, heightPx: heightPx - BAR_PX - 1 }
  const nearFactor = factorFor(NEAR, chordMm, BEVEL_SHARE * Math.min(nearBox.widthPx, nearBox.heightPx))
  const each = nearFactor * PX_PER_MM
  const [middleX, middleY] = [nearBox.leftPx + nearBox.widthPx / 2, nearBox.topPx + nearBox.heightPx / 2]
  const near: Layout = {
    scale: 1 / nearFactor,
    wide: false,
    radiusPx: radiusMm * each,
    px: ([x, y]) => [middleX + (x - middle[0]) * each, middleY - (y - middle[1]) * each],
  }
  return { machine, near, nearFactor, nearBox }
}
