import { barBox, projectionBox } from './boxes.ts'
import type { CardFacts } from './facts.ts'
import { footPart } from './foot.ts'
import { headPart } from './head.ts'
import { leavesPart } from './leavesPart.ts'
import { loadPart, wheelPart } from './lowerRow.ts'
import { LINE } from './parts.ts'
import { type Box, createSheet, type Item, PAGE, type Sheet } from './sheet.ts'
import { stopsBox } from './stopsBox.ts'
import { stopWhenBox } from './stopWhenBox.ts'
import { turningPart } from './turningPart.ts'
import type { Typefaces } from './typefaces.ts'

/** Margin that any printer leaves free. */
const MARGIN_MM = 8

/** Tops and heights of the card's rows. */
const ROWS = {
  head: { yMm: 8, heightMm: 17 },
  boxes: { yMm: 28, heightMm: 78 },
  lower: { yMm: 109, heightMm: 50 },
  foot: { yMm: 163, heightMm: 39 },
} as const

type Part = (sheet: Sheet, box: Box, facts: CardFacts) => void

/** A part and how wide it is. Boxes 1 and 2 hold four figures and a point at full height. */
const boxes: readonly (readonly [Part, number])[] = [
  [projectionBox, 72],
  [barBox, 72],
  [stopsBox, 68],
  [stopWhenBox, 60],
]
const lower: readonly (readonly [Part, number])[] = [
  [wheelPart, 62],
  [turningPart, 58],
  [loadPart, 86],
  [leavesPart, 64],
]

const row = (sheet: Sheet, facts: CardFacts, parts: typeof boxes, place: (typeof ROWS)[keyof typeof ROWS]): void => {
  const takenMm = parts.reduce((sum, [, widthMm]) => sum + widthMm, 0)
  const gapMm = (PAGE.widthMm - 2 * MARGIN_MM - takenMm) / Math.max(1, parts.length - 1)
  let xMm = MARGIN_MM
  for (const [part, widthMm] of parts) {
    part(sheet, { ...place, xMm, widthMm }, facts)
    xMm += widthMm + gapMm
  }
}

/** The card as a list of things to draw, before it is any file. */
export const layOutCard = (facts: CardFacts, typefaces: Typefaces): readonly Item[] => {
  const sheet = createSheet(typefaces)
  const wholeMm = PAGE.widthMm - 2 * MARGIN_MM
  row(sheet, facts, [[headPart, wholeMm]], ROWS.head)
  row(sheet, facts, boxes, ROWS.boxes)
  row(sheet, facts, lower, ROWS.lower)
  const ruleMm = ROWS.foot.yMm - 1.5
  sheet.shape(
    [
      [
        [MARGIN_MM, ruleMm],
        [MARGIN_MM + wholeMm, ruleMm],
      ],
    ],
    false,
    { strokeMm: LINE.outline },
  )
  row(sheet, facts, [[footPart, wholeMm]], ROWS.foot)
  return sheet.items
}
