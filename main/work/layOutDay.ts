import type { TFunction } from 'i18next'
import { quantities } from '../../geometry/quantities.ts'
import { dayOf } from '../cards/facts.ts'
import { dot, LINE } from '../cards/parts.ts'
import { rectangle } from '../cards/shapes.ts'
import { createSheet, type Sheet } from '../cards/sheet.ts'
import type { Typefaces } from '../cards/typefaces.ts'
import type { Page } from '../cards/writePdf.ts'
import type { QueueLine } from '../contract/day.ts'
import { barInWords, stopsInWords, whyInWords } from '../contract/dayWords.ts'
import { figure, joined } from '../contract/figures.ts'
import { createTexts } from '../texts.ts'
import type { DaySheet } from './makeDaySheet.ts'

/** A4 upright, with the margin that any printer leaves free. */
const PAPER = { widthMm: 210, heightMm: 297, marginMm: 10 } as const
const HEAD_MM = 30
const FOOT_MM = 44
/** Room for two lines, and for a thumb to find it by. */
const ROW_MM = 14
const ROWS = Math.floor((PAPER.heightMm - 2 * PAPER.marginMm - HEAD_MM - FOOT_MM) / ROW_MM)

/** Left edges of the columns (mm from the paper's). */
const AT = { tick: 10, code: 22, name: 40, bar: 106, projection: 140, stops: 164 } as const
const RIGHT_MM = PAPER.widthMm - PAPER.marginMm
const BOX_MM = 7

interface Drawing extends DaySheet {
  readonly sheet: Sheet
  readonly t: TFunction
}

const rule = (sheet: Sheet, yMm: number, strokeMm: number): void =>
  sheet.shape(
    [
      [
        [PAPER.marginMm, yMm],
        [RIGHT_MM, yMm],
      ],
    ],
    false,
    { strokeMm },
  )

/** The day as a card has it, from the middle of it, so that no clock's change moves it. */
const dayInWords = (onDay: string): string =>
  dayOf(createTexts().getFixedT(null, 'card'), new Date(`${onDay}T12:00:00`))

const head = ({ sheet, t, onDay, lines }: Drawing, page: number, pages: number): void => {
  const baselineMm = PAPER.marginMm + 9
  sheet.text(t('day:paper.title', { day: dayInWords(onDay) }), {
    xMm: AT.tick,
    baselineMm,
    sizeMm: 9,
    withinMm: 130,
    face: 'strong',
  })
  const count = t('day:paper.count', { count: lines.length })
  const of = pages > 1 ? `${count} ${t('day:paper.page', { page, pages })}` : count
  sheet.text(of, { xMm: RIGHT_MM, baselineMm, sizeMm: 4, withinMm: 55, align: 'right' })
  const names = { baselineMm: PAPER.marginMm + HEAD_MM - 3, sizeMm: 3.6 } as const
  sheet.text(t('day:column.tool'), { ...names, xMm: AT.code, withinMm: 60 })
  sheet.text(t('day:column.bar'), { ...names, xMm: AT.bar, withinMm: 32 })
  sheet.text(t('day:column.projection'), { ...names, xMm: AT.projection, withinMm: 22 })
  sheet.text(t('day:column.stops'), { ...names, xMm: AT.stops, withinMm: RIGHT_MM - AT.stops })
  rule(sheet, PAPER.marginMm + HEAD_MM, LINE.outline)
}

const wheelLine = ({ sheet, t }: Drawing, lines: readonly QueueLine[]): void => {
  const wheels = [...new Set(lines.flatMap(({ setting }) => (setting ? [setting.station.name] : [])))]
  const words = t('day:paper.wheels', { wheels: wheels.join(', ') })
  if (wheels.length > 0)
    sheet.text(words, { xMm: AT.tick, baselineMm: PAPER.marginMm + 17, sizeMm: 4, withinMm: RIGHT_MM - AT.tick })
}

const tickBox = (sheet: Sheet, topMm: number, done: boolean): void => {
  const box = { xMm: AT.tick, yMm: topMm + (ROW_MM - BOX_MM) / 2, widthMm: BOX_MM, heightMm: BOX_MM }
  sheet.shape([rectangle(box)], true, { strokeMm: LINE.outline })
  if (!done) return
  const [x, y] = [box.xMm, box.yMm]
  sheet.shape(
    [
      [
        [x + 1.2, y + 3.8],
        [x + 3, y + 5.6],
        [x + 6, y + 1.4],
      ],
    ],
    false,
    { strokeMm: LINE.frame },
  )
}

const figures = ({ sheet, t, lengthUnit }: Drawing, { setting }: QueueLine, baselineMm: number): void => {
  if (!setting) return
  const large = { baselineMm, sizeMm: 6.4, face: 'figure' } as const
  const bar = barInWords(t, setting, lengthUnit)
  sheet.text(bar.figure, { ...large, xMm: AT.bar, withinMm: 32 })
  sheet.text(bar.how, { xMm: AT.bar, baselineMm: baselineMm + 4.4, sizeMm: 3, withinMm: 32 })
  const projection = joined(figure(setting.projectionMm, 'mm', quantities.aim.projectionMm.decimals, lengthUnit))
  sheet.text(projection, { ...large, xMm: AT.projection, withinMm: 22 })
  const stops = stopsInWords(t, setting, lengthUnit)
  sheet.text(stops.main, { ...large, xMm: AT.stops, withinMm: RIGHT_MM - AT.stops })
  sheet.text(stops.note, { xMm: AT.stops, baselineMm: baselineMm + 4.4, sizeMm: 3, withinMm: RIGHT_MM - AT.stops })
}

const row = (drawing: Drawing, line: QueueLine, topMm: number): void => {
  const { sheet, t, lengthUnit } = drawing
  const { tool, entry, problem } = line
  const baselineMm = topMm + 6
  tickBox(sheet, topMm, entry.doneAt !== null)
  sheet.text(tool.code, { xMm: AT.code, baselineMm, sizeMm: 6.4, withinMm: 15, face: 'figure' })
  dot(sheet, tool.dotCorner === 'left' ? AT.code + 1.2 : AT.code + 9, topMm + 10.6, 1.1)
  sheet.text(tool.name, { xMm: AT.name, baselineMm, sizeMm: 5, withinMm: AT.bar - AT.name - 3, face: 'strong' })
  const small = { xMm: AT.name, baselineMm: baselineMm + 3.9, sizeMm: 2.9, withinMm: AT.bar - AT.name - 3 } as const
  sheet.paragraph(problem ? t('day:noSetUp') : whyInWords(t, line, lengthUnit), small, 2)
  figures(drawing, line, baselineMm)
  rule(sheet, topMm + ROW_MM, LINE.measure)
}

const foot = ({ sheet, t }: Drawing): void => {
  const topMm = PAPER.heightMm - PAPER.marginMm - FOOT_MM + 6
  const place = { xMm: AT.tick, sizeMm: 2.9, withinMm: RIGHT_MM - AT.tick } as const
  const nextMm = sheet.paragraph(t('card:safety'), { ...place, baselineMm: topMm }, 9)
  sheet.paragraph(t('card:rules'), { ...place, baselineMm: nextMm + 0.6, face: 'strong' }, 2)
}

/** @returns the pages of a day's sheet, as lists of what is drawn */
export const layOutDay = (day: DaySheet, t: TFunction, typefaces: Typefaces): readonly Page[] => {
  const pages = Math.max(1, Math.ceil(day.lines.length / ROWS))
  return Array.from({ length: pages }, (_, k) => {
    const sheet = createSheet(typefaces)
    const drawing = { ...day, sheet, t }
    const lines = day.lines.slice(k * ROWS, (k + 1) * ROWS)
    head(drawing, k + 1, pages)
    wheelLine(drawing, lines)
    lines.forEach((line, i) => {
      row(drawing, line, PAPER.marginMm + HEAD_MM + i * ROW_MM)
    })
    foot(drawing)
    return { widthMm: PAPER.widthMm, heightMm: PAPER.heightMm, items: sheet.items }
  })
}
