import type { Pair } from './facts.ts'
import { circle, rectangle } from './shapes.ts'
import { type Box, type Sheet, sizeForFigure, type TextPlace } from './sheet.ts'

/** Pieces that several parts of the card share; lengths in mm. */

/** Lines: frames of the four boxes, outlines of things, measures. */
export const LINE = { frame: 0.8, outline: 0.5, measure: 0.3 } as const
/** Fill of steel and wheel. */
export const STEEL = 0.85

/** Figures at the wheel are read from two metres, those below from one. */
export const MAIN_FIGURE_MM = 18
export const SECOND_FIGURE_MM = 10
/** Baseline of a large figure below the top of its box. */
export const FIGURE_BASELINE_MM = 31

/** Labels and notes in the row below the boxes. */
export const LABEL = { sizeMm: 5.2, face: 'strong' } as const
export const NOTE_MM = 4.3

/** The dot on a corner of the iron. */
export const dot = (sheet: Sheet, xMm: number, yMm: number, radiusMm = 1.6): void =>
  sheet.shape([circle(xMm, yMm, radiusMm)], true, { fill: 0 })

/** A figure of a given height, shrunk only where there is no room. */
export const figureText = (
  sheet: Sheet,
  text: string,
  heightMm: number,
  place: Omit<TextPlace, 'sizeMm' | 'face'>,
): Box => sheet.text(text, { ...place, face: 'figure', sizeMm: sizeForFigure(heightMm) })

/** How a pair is set: both sides where they fit full size, one figure for two that are alike, else both, smaller. */
export const pairFigure = (
  sheet: Sheet,
  { left, right }: Pair<string>,
  heightMm: number,
  room: { readonly xMm: number; readonly widthMm: number; readonly baselineMm: number },
): 'pair' | 'single' => {
  const { xMm, widthMm, baselineMm } = room
  const middleMm = xMm + widthMm / 2
  const halfMm = widthMm / 2 - 2
  const needMm = Math.max(...[left, right].map((text) => sheet.widthMm(text, 'figure', sizeForFigure(heightMm))))
  if (left === right && needMm > halfMm) {
    figureText(sheet, left, heightMm, { xMm: middleMm, baselineMm, withinMm: widthMm, align: 'middle' })
    return 'single'
  }
  const fittedMm = heightMm * Math.min(1, halfMm / needMm)
  const place = { baselineMm, withinMm: halfMm, align: 'middle' } as const
  figureText(sheet, left, fittedMm, { ...place, xMm: xMm + halfMm / 2 })
  figureText(sheet, right, fittedMm, { ...place, xMm: xMm + widthMm - halfMm / 2 })
  sheet.shape(
    [
      [
        [middleMm, baselineMm - heightMm],
        [middleMm, baselineMm],
      ],
    ],
    false,
    { strokeMm: LINE.outline },
  )
  return 'pair'
}

/** Frame, number and heading of one of the four boxes. */
export const frame = (sheet: Sheet, box: Box, step: number, heading: string, unit: string): void => {
  const { xMm, yMm, widthMm } = box
  const tabMm = 9
  const baselineMm = yMm + 6.7
  sheet.shape([rectangle(box)], true, { strokeMm: LINE.frame })
  sheet.shape([rectangle({ xMm, yMm, widthMm: tabMm, heightMm: tabMm })], true, { fill: 0 })
  const middle = { xMm: xMm + tabMm / 2, baselineMm, sizeMm: 6.8, withinMm: tabMm, align: 'middle' } as const
  sheet.text(String(step), { ...middle, face: 'strong', white: true })
  const unitBox = sheet.text(unit, { xMm: xMm + widthMm - 3, baselineMm, sizeMm: 6.2, withinMm: 20, align: 'right' })
  const headingMm = xMm + tabMm + 3
  sheet.text(heading, {
    xMm: headingMm,
    baselineMm,
    sizeMm: 6.6,
    withinMm: unitBox.xMm - headingMm - 2,
    face: 'strong',
  })
}
