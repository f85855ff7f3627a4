import { PX_PER_MM } from '../ui/scale.ts'
import type { Box } from '../ui/useBox.ts'
import type { Point, Triangle } from './triangle.ts'

/** Where the drawing stands on the screen, and its one scale. */
export interface Layout {
  /** Drawn 1 : `scale`. */
  readonly scale: number
  /** Figures stand beside their part; without room for that they stand in rows below. */
  readonly wide: boolean
  readonly radiusPx: number
  px(point: Point): readonly [xPx: number, yPx: number]
}

/** Scales of drafting, and some between for small windows, largest first. */
const SCALES = [1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10] as const
/** Room for figures left and right of the drawing (px). */
const LEFT_PX = 372
const RIGHT_PX = 356
/** Under this width figures stand below the drawing (px). */
const WIDE_PX = 960
const MARGIN_PX = 24
/** The axle stands this far above the lower end of the drawing (px). */
const AXLE_PX = 28

interface Extent {
  readonly radiusMm: number
  readonly topMm: number
  readonly leftMm: number
  readonly rightMm: number
}

/** How far the drawing reaches. @param bladeEndMm where the drawn blade ends, up from its edge */
export const extentOf = (triangle: Triangle, radiusMm: number, bladeEndMm: number): Extent => {
  const end = triangle.onBlade(bladeEndMm, 0)
  return {
    radiusMm,
    topMm: Math.max(end[1], triangle.bar[1]) + 16,
    leftMm: Math.max(radiusMm, -end[0], -triangle.bar[0]),
    rightMm: Math.max(radiusMm, triangle.edge[0]),
  }
}

/** @returns the largest drawing that fits @param textScale how many times its usual size text has */
export const layoutOf = (extent: Extent, { widthPx, heightPx }: Box, textScale = 1): Layout => {
  const wide = widthPx >= WIDE_PX * textScale
  const fits = (scale: number): boolean => {
    const each = PX_PER_MM / scale
    if (extent.topMm * each > heightPx - AXLE_PX - MARGIN_PX) return false
    if (!wide) return (extent.leftMm + extent.rightMm) * each <= widthPx - 2 * MARGIN_PX
    return LEFT_PX + Math.max(0, extent.rightMm * each) + RIGHT_PX <= widthPx
  }
  const scale = SCALES.find(fits) ?? (SCALES.at(-1) as number)
  const each = PX_PER_MM / scale
  const spare = widthPx - LEFT_PX - RIGHT_PX - extent.rightMm * each
  const middleMm = (extent.leftMm - extent.rightMm) / 2
  const axleX = wide ? LEFT_PX + spare / 2 : widthPx / 2 + middleMm * each
  const axleY = heightPx - AXLE_PX
  return {
    scale,
    wide,
    radiusPx: extent.radiusMm * each,
    px: ([x, y]) => [axleX + x * each, axleY - y * each],
  }
}
