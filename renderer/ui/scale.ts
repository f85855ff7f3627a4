import { MM_PER_INCH, MM_PER_THOU } from '../../geometry/units.ts'
import type { Settings } from '../../main/contract/entities.ts'
import { figure, fixed, joined } from '../../main/contract/figures.ts'

/** CSS pixels in a millimetre: 96 pixels an inch. A drawing's scale is true wherever the screen's is. */
export const PX_PER_MM = 96 / MM_PER_INCH

/** Factors a drawing may be made with; drafting's series 1-2-5, with halves for the way across. */
export const ACROSS = [0.25, 0.5, 1, 1.5, 2, 2.5, 3, 4, 5, 10] as const
export const DEPTH = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] as const

/** @returns the largest factor with which `sizeMm` fits into `roomPx`, or the smallest there is */
export const factorFor = (factors: readonly number[], sizeMm: number, roomPx: number): number =>
  factors.findLast((factor) => sizeMm * factor * PX_PER_MM <= roomPx) ?? (factors[0] as number)

/** A length for a scale bar, with its label. */
export interface BarLength {
  readonly mm: number
  readonly label: string
}

const unitMm: Record<Settings['lengthUnit'], number> = { mm: 1, inch: MM_PER_INCH, thou: MM_PER_THOU }

/** @returns the largest of 1, 2 and 5 of some ten that is not above `most` (above 0) */
export const roundUpTo = (most: number): number => {
  const ten = 10 ** Math.floor(Math.log10(most))
  return [5, 2, 1].map((step) => step * ten).find((length) => length <= most) ?? ten
}

/** @returns the longest round length (1, 2 or 5 of some ten) up to `mostMm` in the unit that lengths are read in */
export const barLength = (mostMm: number, lengthUnit: Settings['lengthUnit']): BarLength => {
  const most = mostMm / unitMm[lengthUnit]
  const round = roundUpTo(most)
  const decimals = Math.max(0, -Math.floor(Math.log10(round)))
  const unit = figure(0, 'mm', 0, lengthUnit).unit
  return { mm: round * unitMm[lengthUnit], label: joined({ text: fixed(round, decimals), unit }) }
}
