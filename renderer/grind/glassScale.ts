import { fixed } from '../../main/contract/figures.ts'
import { PX_PER_MM } from '../ui/scale.ts'

/** Factors that a depth may be magnified by; one is chosen, never a crooked figure. */
const DEPTH_FACTORS = [1, 2, 5, 10, 20, 50, 80, 100, 200, 500, 800, 1000, 2000] as const

/** How a view is magnified. */
export interface Scale {
  readonly pxPerMm: number
  /** Against a millimetre of the screen. */
  readonly factor: number
}

/** Across: the whole width of the blade fills the view. */
export const acrossScale = (widthMm: number, viewPx: number): Scale => {
  const pxPerMm = viewPx / widthMm
  return { pxPerMm, factor: pxPerMm / PX_PER_MM }
}

/** Depth: the largest round factor at which the deepest curve still fits. */
export const depthScale = (deepestMm: number, viewPx: number): Scale => {
  const factor = DEPTH_FACTORS.findLast((f) => f * PX_PER_MM * deepestMm <= viewPx) ?? DEPTH_FACTORS[0]
  const pxPerMm = factor * PX_PER_MM
  return { pxPerMm, factor }
}

/** A factor as written: whole from 3 on, one decimal below. */
export const factorText = (factor: number): string => fixed(factor, factor >= 3 ? 0 : 1)

/** Sizes that the two figures in the glass may have (px at 16 px text), the largest that leaves the curves in sight. */
const RELIEF_SIZES_PX = [56, 40, 28] as const
/** Width of a digit as a share of its size, and room on both sides of a figure (px). */
const DIGIT_SHARE = 0.52
const RELIEF_ROOM_PX = 28

/** Height of a figure as a share of its size, and of the words below it (px). */
const FIGURE_SHARE = 0.95
const FIGURE_WORDS_PX = 21

/** @returns the size of the relief figures in room of this size, each of so many characters */
export const reliefSizePx = (roomPx: number, characters: number, highPx = Number.POSITIVE_INFINITY): number =>
  RELIEF_SIZES_PX.find(
    (px) =>
      2 * (characters * DIGIT_SHARE * px + RELIEF_ROOM_PX) <= 0.9 * roomPx &&
      px * FIGURE_SHARE + FIGURE_WORDS_PX <= highPx,
  ) ?? RELIEF_SIZES_PX[2]
