import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { type LabelBox, type LabelSheet, paperOf, positionAt, positionCount } from './labelSheets.ts'

/**
 * Smallest square of a code that is still read well: four dots of a printer with 300 to the inch (0.085 mm each). With fewer, ink that
 * spreads by a dot closes the gaps.
 */
export const LEAST_SQUARE_MM = 0.34
/** A code larger than this is no better read (mm a square; 21 mm in all). */
const MOST_SQUARE_MM = 1
/** Squares along a code's side: the smallest form there is holds every mark (at most 16 signs at this safety). */
export const CODE_SQUARES = 21
/** Clear squares that a reader needs on every side, by ISO/IEC 18004. */
export const CLEAR_SQUARES = 4
const WHOLE_SQUARES = CODE_SQUARES + 2 * CLEAR_SQUARES

/** Edge of the paper that printers leave white (mm): for sheets as printers of any make do, for single labels as label printers do. */
const UNPRINTED_MM = { sheet: 4.5, single: 1.3 } as const
/** Kept free inside a label (mm), since a sheet never lies quite straight; no more than the smallest code's clear margin. */
const PADDING_MM = 1.3

/** Most of a label's width that goes to a code beside words, and of its height to one above them. */
const BESIDE_SHARE = 0.42
const ABOVE_SHARE = 0.72
/** A label at least this many times as wide as high has its words beside the code. */
const WIDE = 1.35

/** Room that the shortest code needs in figures that are read at arm's length (mm). */
const LEAST_WORDS_MM = { widthMm: 4, heightMm: 2.5 } as const

/** The part of a label that may be printed on. */
const printable = ({ xMm, yMm, widthMm, heightMm }: LabelBox, sheet: LabelSheet): LabelBox => {
  const paper = paperOf(sheet)
  const edgeMm = UNPRINTED_MM[sheet.paper === 'single' ? 'single' : 'sheet']
  const [left, top] = [Math.max(xMm + PADDING_MM, edgeMm), Math.max(yMm + PADDING_MM, edgeMm)]
  const right = Math.min(xMm + widthMm - PADDING_MM, paper.widthMm - edgeMm)
  const foot = Math.min(yMm + heightMm - PADDING_MM, paper.heightMm - edgeMm)
  return { xMm: left, yMm: top, widthMm: right - left, heightMm: foot - top }
}

/** Where code and words of a label go. */
export interface LabelPlaces {
  /** What the code's squares cover, without the clear margin around them. */
  readonly code: LabelBox
  readonly words: LabelBox
}

const squareOf = ({ widthMm, heightMm }: LabelBox, wide: boolean): number => {
  const sideMm = wide ? Math.min(heightMm, BESIDE_SHARE * widthMm) : Math.min(widthMm, ABOVE_SHARE * heightMm)
  return Math.min(MOST_SQUARE_MM, Math.max(LEAST_SQUARE_MM, sideMm / WHOLE_SQUARES))
}

/** @param position 1 for the first label @returns where its code and words go */
export const placesAt = (sheet: LabelSheet, position: number): LabelPlaces => {
  const label = positionAt(sheet, position)
  const area = printable(label, sheet)
  const wide = label.widthMm >= WIDE * label.heightMm
  // Where the printer's white edge cuts into a low label, its code is smaller than its neighbours'.
  const squareMm = Math.min(squareOf(label, wide), area.heightMm / CODE_SQUARES, area.widthMm / CODE_SQUARES)
  const [clearMm, codeMm] = [CLEAR_SQUARES * squareMm, CODE_SQUARES * squareMm]
  const [right, foot] = [area.xMm + area.widthMm, area.yMm + area.heightMm]
  const middle = (fromMm: number, lengthMm: number) => fromMm + (lengthMm - codeMm) / 2
  const xMm = Math.max(area.xMm, wide ? label.xMm + clearMm : middle(label.xMm, label.widthMm))
  const yMm = Math.max(area.yMm, wide ? middle(label.yMm, label.heightMm) : label.yMm + clearMm)
  const code = {
    xMm: Math.min(xMm, right - codeMm),
    yMm: Math.min(yMm, foot - codeMm),
    widthMm: codeMm,
    heightMm: codeMm,
  }
  const [besideMm, belowMm] = [code.xMm + codeMm + clearMm, code.yMm + codeMm + clearMm]
  const words = wide
    ? { xMm: besideMm, yMm: code.yMm, widthMm: right - besideMm, heightMm: foot - code.yMm }
    : { ...area, yMm: belowMm, heightMm: foot - belowMm }
  return { code, words }
}

const hasRoom = ({ code, words }: LabelPlaces): boolean =>
  code.widthMm >= LEAST_SQUARE_MM * CODE_SQUARES - 1e-9 &&
  words.widthMm >= LEAST_WORDS_MM.widthMm &&
  words.heightMm >= LEAST_WORDS_MM.heightMm

/** Rounding of sizes given to the tenth must not make a sheet too large for its paper (mm). */
const SLACK_MM = 0.3

/** @returns the sheet, or why labels cannot be printed on it */
export const checkSheet = (sheet: LabelSheet): Result<LabelSheet> => {
  const paper = paperOf(sheet)
  const count = positionCount(sheet)
  const last = positionAt(sheet, count)
  const overMm = Math.max(last.xMm + last.widthMm - paper.widthMm, last.yMm + last.heightMm - paper.heightMm)
  if (overMm > SLACK_MM) return failed(problem('labelsBeyondPaper', 'sheet', { overMm }))
  // The first and the last label meet the paper's four edges; no other has less room.
  const roomy =
    Math.min(sheet.widthMm, sheet.heightMm) >= LEAST_SQUARE_MM * WHOLE_SQUARES &&
    [1, count].every((position) => hasRoom(placesAt(sheet, position)))
  return roomy ? ok(sheet) : failed(problem('labelTooSmall', 'sheet'))
}
