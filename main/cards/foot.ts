import { markOf } from '../contract/codes.ts'
import { type CardFacts, dayOf } from './facts.ts'
import { dot, LINE } from './parts.ts'
import { rectangle } from './shapes.ts'
import type { Box, Sheet } from './sheet.ts'
import { codeRuns } from './squareCode.ts'

const PENCIL_MM = 40
const STAGES = ['found', 'ground', 'honed'] as const
const PLACES = ['left', 'half', 'middle', 'half', 'right'] as const

const pencilBoxes = (sheet: Sheet, { xMm, yMm }: Box, heading: string, { t, tool }: CardFacts): void => {
  const cellMm = PENCIL_MM / PLACES.length
  const boxes = { xMm, yMm: yMm + 8, widthMm: PENCIL_MM, heightMm: 17 }
  sheet.text(heading, { xMm, baselineMm: yMm + 5, sizeMm: 5, withinMm: PENCIL_MM, face: 'strong' })
  sheet.shape([rectangle(boxes)], true, { strokeMm: LINE.outline })
  PLACES.forEach((place, i) => {
    const leftMm = xMm + i * cellMm
    if (i > 0)
      sheet.shape(
        [
          [
            [leftMm, boxes.yMm],
            [leftMm, boxes.yMm + boxes.heightMm],
          ],
        ],
        false,
        { strokeMm: LINE.measure },
      )
    const words = { xMm: leftMm + cellMm / 2, baselineMm: yMm + 29.5, sizeMm: 3.3, withinMm: cellMm - 0.6 }
    sheet.text(t(place), { ...words, align: 'middle' })
  })
  dot(sheet, tool.dotCorner === 'left' ? xMm + cellMm / 2 : xMm + PENCIL_MM - cellMm / 2, yMm + 33, 1.3)
}

/** With room for the clear margin of four squares that readers of such codes need. */
const CODE_SIDE_MM = 19

/** Codes of tool and job; a generic card has none. */
const codesOf = ({ tool }: CardFacts): string => [tool.code, tool.jobCode ?? ''].filter((code) => code !== '').join(' ')

const marks = (sheet: Sheet, rightMm: number, yMm: number, facts: CardFacts): void => {
  const { t, tool, at } = facts
  const codes = codesOf(facts)
  const place = { xMm: rightMm, sizeMm: 3.4, withinMm: 30, align: 'right' } as const
  if (codes !== '') {
    const mark = markOf(tool.code, tool.jobCode)
    sheet.shape(codeRuns(mark, rightMm - CODE_SIDE_MM, yMm + 3.5, CODE_SIDE_MM), true, { fill: 0 })
  }
  const lines = [codes, dayOf(t, at), tool.who].filter((line) => line !== '')
  lines.forEach((line, i) => {
    sheet.text(line, { ...place, baselineMm: yMm + 28.5 + i * 4.2 })
  })
}

/** The foot: room for pencilled leaves, cautions, codes and date. */
export const footPart = (sheet: Sheet, box: Box, facts: CardFacts): void => {
  const { xMm, yMm, widthMm } = box
  const { t } = facts
  STAGES.forEach((stage, i) => {
    pencilBoxes(sheet, { ...box, xMm: xMm + i * (PENCIL_MM + 2.5) }, t(stage), facts)
  })
  const wordsMm = xMm + STAGES.length * (PENCIL_MM + 2.5) + 2
  const place = { xMm: wordsMm, sizeMm: 2.9, withinMm: xMm + widthMm - 33 - wordsMm }
  const nextMm = sheet.paragraph(t('safety'), { ...place, baselineMm: yMm + 3.2 }, 10)
  sheet.paragraph(t('rules'), { ...place, baselineMm: nextMm + 0.4, face: 'strong' }, 2)
  marks(sheet, xMm + widthMm, yMm, facts)
}
