import { circle, rectangle } from '../cards/shapes.ts'
import { type Box, type Sheet, sizeForFigure } from '../cards/sheet.ts'
import type { LabelFacts } from './labelFacts.ts'

/** Words smaller than this (mm, 5.7 points) are not read at arm's length; what would be smaller is left out. */
const LEAST_WORDS_MM = 2
/** Height of a row of words over their size; a little more than paragraphs take. */
const LEADING = 1.2
/** Left free under the code, over its height. */
const CODE_GAP = 0.08
const MOST_NAME_LINES = 2
/** Width of the drawn iron over its height. */
const IRON_WIDTH = 0.62

/** Shares of a label's height, and the most they come to (mm). */
const CODE = { share: 0.34, mostMm: 11 } as const
const NAME = { share: 0.15, mostMm: 4.6 } as const
const LINE = { share: 0.12, mostMm: 3.8 } as const

const sized = ({ share, mostMm }: typeof CODE | typeof NAME | typeof LINE, heightMm: number, leastMm: number): number =>
  Math.max(leastMm, Math.min(share * heightMm, mostMm))

/** The end of the iron, back up and edge down, with its dot. */
const iron = (sheet: Sheet, xMm: number, yMm: number, heightMm: number, dot: 'left' | 'right'): void => {
  const widthMm = IRON_WIDTH * heightMm
  sheet.shape([rectangle({ xMm, yMm, widthMm, heightMm })], true, { strokeMm: 0.2 })
  const dotMm = xMm + widthMm * (dot === 'left' ? 0.28 : 0.72)
  sheet.shape([circle(dotMm, yMm + 0.8 * heightMm, 0.11 * heightMm)], true, { fill: 0 })
}

/** Code large, the iron's dot beside it, name and size below; as much of it as there is room for. */
export const labelText = (sheet: Sheet, box: Box, facts: LabelFacts): void => {
  const codeMm = sized(CODE, box.heightMm, 2.5)
  codeRow(sheet, box, codeMm, facts)
  const takenMm = codeMm * (1 + CODE_GAP)
  words(sheet, { ...box, yMm: box.yMm + takenMm, heightMm: box.heightMm - takenMm }, box.heightMm, facts)
}

const codeRow = (sheet: Sheet, { xMm, yMm, widthMm }: Box, codeMm: number, { code, dot }: LabelFacts): void => {
  const ironMm = dot === null ? 0 : IRON_WIDTH * codeMm + 1
  const place = { xMm, baselineMm: yMm + codeMm, withinMm: Math.max(1, widthMm - ironMm) }
  const shown = sheet.text(code, { ...place, sizeMm: sizeForFigure(codeMm), face: 'figure' })
  if (dot !== null) iron(sheet, shown.xMm + shown.widthMm + 1, yMm + 0.1, codeMm - 0.1, dot)
}

const words = (sheet: Sheet, room: Box, labelMm: number, { name, line }: LabelFacts): void => {
  const { xMm, yMm, widthMm, heightMm } = room
  const place = { xMm, withinMm: widthMm }
  const nameMm = sized(NAME, labelMm, LEAST_WORDS_MM)
  const lineMm = sized(LINE, labelMm, LEAST_WORDS_MM)
  if (heightMm < LEADING * nameMm) return
  const forLineMm = line === '' ? 0 : LEADING * lineMm
  const lines = Math.floor((heightMm - forLineMm) / (LEADING * nameMm))
  const nameLines = Math.max(1, Math.min(MOST_NAME_LINES, lines))
  const nextMm = sheet.paragraph(
    name,
    { ...place, baselineMm: yMm + nameMm, sizeMm: nameMm, face: 'strong' },
    nameLines,
  )
  if (line !== '' && lines >= 1) sheet.text(line, { ...place, baselineMm: nextMm - nameMm + lineMm, sizeMm: lineMm })
}
