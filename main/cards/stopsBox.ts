import { type CardFacts, settingLines, stopsOf } from './facts.ts'
import { dot, FIGURE_BASELINE_MM, frame, LINE, MAIN_FIGURE_MM, pairFigure, STEEL } from './parts.ts'
import { circle, dimension, rectangle } from './shapes.ts'
import type { Box, Point, Sheet } from './sheet.ts'

const screw = (xMm: number, yMm: number, toMm: number): readonly (readonly Point[])[] => {
  const direction = Math.sign(toMm - xMm)
  const shank = rectangle({ xMm: Math.min(xMm, toMm), yMm: yMm - 1.6, widthMm: Math.abs(toMm - xMm), heightMm: 3.2 })
  const block = rectangle({ xMm: xMm + direction * 4 - 3, yMm: yMm - 5, widthMm: 6, heightMm: 10 })
  return [shank, block]
}

const drawStops = (sheet: Sheet, box: Box): void => {
  const [middleMm, yMm] = [box.xMm + box.widthMm / 2, box.yMm + 57]
  const [bearingMm, playMm] = [5.2, 4]
  for (const side of [-1, 1]) {
    const tipMm = middleMm + side * (bearingMm + playMm)
    for (const outline of screw(middleMm + side * 27, yMm, tipMm))
      sheet.shape([outline], true, { fill: 1, strokeMm: LINE.outline })
    sheet.shape(dimension([middleMm + side * bearingMm, yMm - 8], [tipMm, yMm - 8]), false, { strokeMm: LINE.outline })
  }
  sheet.shape([circle(middleMm, yMm, bearingMm)], true, { fill: STEEL, strokeMm: LINE.outline })
  sheet.shape([circle(middleMm, yMm, 1.8)], true, { fill: 1, strokeMm: LINE.outline })
}

const labelSides = (sheet: Sheet, box: Box, { t, tool }: CardFacts): void => {
  const [leftMm, rightMm, baselineMm] = [box.xMm + 4, box.xMm + box.widthMm - 4, box.yMm + 74]
  const shift = (side: 'left' | 'right') => (tool.dotCorner === side ? 5 : 0)
  const place = { baselineMm, sizeMm: 6.6, withinMm: 22, face: 'strong' } as const
  sheet.text(t('left'), { ...place, xMm: leftMm + shift('left') })
  sheet.text(t('right'), { ...place, xMm: rightMm - shift('right'), align: 'right' })
  dot(sheet, tool.dotCorner === 'left' ? leftMm + 1.8 : rightMm - 1.8, baselineMm - 1.7)
}

/** Where settings that follow one another are listed, below the figures of the first, and how far apart. */
const SETTINGS_MM = 53
const SETTING_MM = 6.5

/** Box 3: how far out the stops go on each side, counted from just touching; for a square fixture that there are none. */
export const stopsBox = (sheet: Sheet, box: Box, facts: CardFacts): void => {
  const { t } = facts
  const stops = stopsOf(facts)
  frame(sheet, box, 3, t('stops'), stops?.unit ?? '')
  const room = { xMm: box.xMm + 2, widthMm: box.widthMm - 4, baselineMm: box.yMm + FIGURE_BASELINE_MM }
  const note = { xMm: box.xMm + box.widthMm / 2, withinMm: box.widthMm - 4, align: 'middle' } as const
  if (stops === null) {
    sheet.text(t('square'), { ...note, baselineMm: room.baselineMm - 2, sizeMm: 16, face: 'strong' })
    sheet.paragraph(t('squareNote'), { ...note, baselineMm: box.yMm + 44, sizeMm: 5.4 }, 3)
    return
  }
  const way = pairFigure(sheet, { left: stops.main.left.text, right: stops.main.right.text }, MAIN_FIGURE_MM, room)
  if (way === 'single') sheet.text(t('eachSide'), { ...note, baselineMm: box.yMm + 38, sizeMm: 5 })
  if (stops.note) sheet.text(stops.note, { ...note, baselineMm: box.yMm + 45, sizeMm: 5 })
  const lines = settingLines(facts)
  for (const [i, line] of lines.entries())
    sheet.text(line, { ...note, baselineMm: box.yMm + SETTINGS_MM + i * SETTING_MM, sizeMm: 5, face: 'strong' })
  if (lines.length === 0) drawStops(sheet, box)
  labelSides(sheet, box, facts)
}
