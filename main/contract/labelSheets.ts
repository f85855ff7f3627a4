import { z } from 'zod'
import { type Quantity, quantities } from '../../geometry/quantities.ts'
import { within } from './record.ts'

/** Paper that labels come on (mm): A4 and A5 by ISO 216, Letter 8.5 x 11 in; a single label is its own paper. */
export const papers = {
  a4: { widthMm: 210, heightMm: 297 },
  a5: { widthMm: 148, heightMm: 210 },
  letter: { widthMm: 215.9, heightMm: 279.4 },
} as const

export const paperNames = ['a4', 'a5', 'letter', 'single'] as const

const count = ({ min, max }: Quantity) => z.int().min(min).max(max)
const { label } = quantities

/** Labels on a sheet, in rows and columns; lengths in mm, `leftMm` and `topMm` to the first label, gaps between labels. */
export const labelSheetSchema = z.strictObject({
  paper: z.enum(paperNames),
  columns: count(label.columns),
  rows: count(label.rows),
  widthMm: within(label.widthMm),
  heightMm: within(label.heightMm),
  leftMm: within(label.leftMm),
  topMm: within(label.topMm),
  gapAcrossMm: within(label.gapAcrossMm),
  gapDownMm: within(label.gapDownMm),
})
export type LabelSheet = z.output<typeof labelSheetSchema>

type Grid = readonly [columns: number, rows: number, widthMm: number, heightMm: number]
type Margins = readonly [leftMm: number, topMm: number, gapAcrossMm: number, gapDownMm: number]

const sheet = (
  paper: keyof typeof papers,
  [columns, rows, widthMm, heightMm]: Grid,
  [leftMm, topMm, gapAcrossMm, gapDownMm]: Margins,
): LabelSheet => ({ paper, columns, rows, widthMm, heightMm, leftMm, topMm, gapAcrossMm, gapDownMm })

/** One label on a roll or card of its own. */
export const singleLabel = (widthMm: number, heightMm: number): LabelSheet => ({
  ...{ paper: 'single', columns: 1, rows: 1, widthMm, heightMm },
  ...{ leftMm: 0, topMm: 0, gapAcrossMm: 0, gapDownMm: 0 },
})

/**
 * Sheets as they are commonly sold: plain grids, common practice, written down from memory and rounded to the tenth; a print on plain
 * paper held against the sheet tells whether one fits. Those of Letter are round in inches (2 5/8 x 1, 4 x 1, 4 x 2, 1 3/4 x 1/2).
 */
export const labelSheets = [
  sheet('a4', [3, 7, 63.5, 38.1], [7.2, 15.1, 2.5, 0]),
  sheet('a4', [3, 8, 70, 37], [0, 0.5, 0, 0]),
  sheet('a4', [2, 7, 99.1, 38.1], [4.7, 15.1, 2.5, 0]),
  sheet('a4', [4, 12, 45.7, 21.2], [9.8, 21.3, 2.5, 0]),
  sheet('a4', [5, 13, 38.1, 21.2], [4.8, 10.7, 2.5, 0]),
  sheet('letter', [3, 10, 66.7, 25.4], [4.8, 12.7, 3.2, 0]),
  sheet('letter', [2, 10, 101.6, 25.4], [4, 12.7, 4.8, 0]),
  sheet('letter', [2, 5, 101.6, 50.8], [4, 12.7, 4.8, 0]),
  sheet('letter', [4, 20, 44.4, 12.7], [7.6, 12.7, 7.6, 0]),
  singleLabel(57, 32),
  singleLabel(50, 25),
  singleLabel(40, 20),
  singleLabel(25, 25),
] as const satisfies readonly LabelSheet[]

/** A rectangle on paper, mm from its upper left corner. */
export interface LabelBox {
  readonly xMm: number
  readonly yMm: number
  readonly widthMm: number
  readonly heightMm: number
}

/** @returns width and height of the paper (mm) */
export const paperOf = ({ paper, widthMm, heightMm }: LabelSheet) =>
  paper === 'single' ? { widthMm, heightMm } : papers[paper]

export const positionCount = ({ columns, rows }: LabelSheet): number => columns * rows

/** @param position 1 for the first label, row after row @returns where that label lies */
export const positionAt = (sheet: LabelSheet, position: number): LabelBox => {
  const { columns, widthMm, heightMm, leftMm, topMm, gapAcrossMm, gapDownMm } = sheet
  const [column, row] = [(position - 1) % columns, Math.floor((position - 1) / columns)]
  const [xMm, yMm] = [leftMm + column * (widthMm + gapAcrossMm), topMm + row * (heightMm + gapDownMm)]
  return { xMm, yMm, widthMm, heightMm }
}
