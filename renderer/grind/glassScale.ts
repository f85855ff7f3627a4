/** CSS pixels in a millimetre of the screen: 96 to the inch by definition (CSS Values and Units 3). */
const CSS_PX_PER_MM = 96 / 25.4

/** Factors that a depth may be magnified by; one is chosen, never a crooked figure. */
const DEPTH_FACTORS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000] as const

/** Lengths that a scale bar may have (mm). */
const BAR_LENGTHS_MM = [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50] as const

/** How a view is magnified and how long its scale bar is. */
export interface Scale {
  readonly pxPerMm: number
  /** Against a millimetre of the screen. */
  readonly factor: number
  readonly barMm: number
}

const longestBar = (pxPerMm: number, mostPx: number): number =>
  BAR_LENGTHS_MM.findLast((mm) => mm * pxPerMm <= mostPx) ?? BAR_LENGTHS_MM[0]

/** Across: the whole width of the blade fills the view. */
export const acrossScale = (widthMm: number, viewPx: number): Scale => {
  const pxPerMm = viewPx / widthMm
  return { pxPerMm, factor: pxPerMm / CSS_PX_PER_MM, barMm: longestBar(pxPerMm, viewPx / 4) }
}

/** Depth: the largest round factor at which the deepest curve still fits. */
export const depthScale = (deepestMm: number, viewPx: number): Scale => {
  const factor = DEPTH_FACTORS.findLast((f) => f * CSS_PX_PER_MM * deepestMm <= viewPx) ?? DEPTH_FACTORS[0]
  const pxPerMm = factor * CSS_PX_PER_MM
  return { pxPerMm, factor, barMm: longestBar(pxPerMm, viewPx / 3) }
}

/** A factor as written: whole from 3 on, one decimal below. */
export const factorText = (factor: number): string => (factor >= 3 ? factor.toFixed(0) : factor.toFixed(1))
