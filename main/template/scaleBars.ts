import type { TFunction } from 'i18next'
import { MM_PER_INCH } from '../../geometry/units.ts'
import type { Point, Sheet } from '../cards/sheet.ts'

/** Lengths of the two bars that a print is checked by. */
export const METRIC_BAR_MM = 100
const INCH_BAR_IN = 4

/** A bar from `xMm` to the right: its line, with a tick at each part, longer at both ends and at each whole. */
const bar = (
  xMm: number,
  yMm: number,
  partMm: number,
  parts: number,
  partsInWhole: number,
): readonly (readonly Point[])[] => {
  const tick = (k: number): readonly Point[] => {
    const highMm = k % partsInWhole === 0 ? 4 : 2
    return [
      [xMm + k * partMm, yMm],
      [xMm + k * partMm, yMm - highMm],
    ]
  }
  const line: readonly Point[] = [
    [xMm, yMm],
    [xMm + parts * partMm, yMm],
  ]
  return [line, ...Array.from({ length: parts + 1 }, (_, k) => tick(k))]
}

/** Hundred millimetres in fives and tens, and beside it four inches in quarters. @param yMm where both stand */
export const scaleBars = (sheet: Sheet, xMm: number, yMm: number, t: TFunction): void => {
  const inchMm = xMm + METRIC_BAR_MM + 40
  const style = { strokeMm: 0.2 }
  sheet.shape(bar(xMm, yMm, 5, METRIC_BAR_MM / 5, 2), false, style)
  sheet.shape(bar(inchMm, yMm, MM_PER_INCH / 4, 4 * INCH_BAR_IN, 4), false, style)
  const words = { baselineMm: yMm + 5.5, sizeMm: 4.4, withinMm: METRIC_BAR_MM }
  sheet.text(t('template.metricBar', { length: METRIC_BAR_MM }), { ...words, xMm })
  sheet.text(t('template.inchBar', { length: INCH_BAR_IN }), { ...words, xMm: inchMm })
}
