import { quantities } from '../../geometry/quantities.ts'
import { figure } from '../contract/figures.ts'
import { createTexts } from '../texts.ts'
import { type CardFacts, dayOf, inWords } from './facts.ts'
import { dot, figureText, LABEL, LINE, NOTE_MM, SECOND_FIGURE_MM } from './parts.ts'
import { dimension, rectangle } from './shapes.ts'
import type { Box, Point, Sheet } from './sheet.ts'

/** Below the boxes, read from a metre: wheel and load. */

/** Cautions of this job that there is room for; the engine gives the weightiest first. */
const MOST_CAUTION_LINES = 4

/** What is wrong, without what to do about it: the first sentence of each caution. */
const cautionsInShort = (cautions: CardFacts['report']['cautions']): string => {
  const words = createTexts().getFixedT(null, 'cautions')
  return cautions.map(({ code, params }) => words(code, params).replace(/([.:]) .*$/, '.')).join(' ')
}

/** The wheel as measured, and what this job makes one careful of. */
export const wheelPart = (
  sheet: Sheet,
  { xMm, yMm, widthMm }: Box,
  { t, tool, job, report, length }: CardFacts,
): void => {
  const { station } = quantities
  const place = { xMm, withinMm: widthMm }
  const label = tool.measuredAt
    ? t('wheelMeasured', { date: dayOf(t, new Date(tool.measuredAt)) })
    : t('wheelUnmeasured')
  sheet.text(label, { ...place, ...LABEL, baselineMm: yMm + 5 })
  const { text, unit } = length(job.station.wheelDiameterMm, station.wheelDiameterMm.decimals)
  const found = figureText(sheet, text, SECOND_FIGURE_MM, { ...place, withinMm: widthMm - 14, baselineMm: yMm + 18 })
  sheet.text(unit, { xMm: found.xMm + found.widthMm + 2, baselineMm: yMm + 18, sizeMm: 6, withinMm: 12 })
  const speed = (mPerS: number) => inWords(figure(mPerS, 'mPerS', 1))
  const rim = t('rim', { speed: speed(report.setUp.rimSpeedMPerS), most: speed(job.station.maxRimSpeedMPerS) })
  const tip = t('bevel', {
    bevel: inWords(figure(report.setUp.bevelAngleDeg, 'deg', quantities.aim.bevelAngleDeg.decimals)),
  })
  let nextMm = yMm + 24.5
  for (const words of [rim, tip]) nextMm = sheet.paragraph(words, { ...place, baselineMm: nextMm, sizeMm: NOTE_MM }, 1)
  const cautions = cautionsInShort(report.cautions)
  if (cautions === '') sheet.paragraph(t('newCard'), { ...place, baselineMm: nextMm, sizeMm: NOTE_MM }, 2)
  else sheet.paragraph(cautions, { ...place, baselineMm: nextMm, sizeMm: 3.5, face: 'strong' }, MOST_CAUTION_LINES)
}

/** Widest iron that is drawn full size. */
const FULL_SIZE_MM = 84

/** How far the load goes, on the iron itself. */
export const loadPart = (sheet: Sheet, { xMm, yMm, widthMm }: Box, { t, tool, job, length }: CardFacts): void => {
  const { fingerReachMm, loadN } = job.motion
  sheet.text(t('load'), { ...LABEL, xMm, baselineMm: yMm + 5, withinMm: widthMm })
  const { text, unit } = length(fingerReachMm, quantities.motion.fingerReachMm.decimals)
  const found = figureText(sheet, text, SECOND_FIGURE_MM, { xMm, baselineMm: yMm + 18, withinMm: widthMm / 2 })
  const noteMm = found.xMm + found.widthMm + 2
  const load = inWords(figure(loadN, 'N', quantities.motion.loadN.decimals))
  const note = { xMm: noteMm, baselineMm: yMm + 18, sizeMm: 5, withinMm: xMm + widthMm - noteMm }
  sheet.text(`${unit} ${t('loadNote', { load })}`, note)
  const scale = job.blade.widthMm <= FULL_SIZE_MM ? 1 : 0.5
  const iron = {
    xMm: xMm + (widthMm - job.blade.widthMm * scale) / 2,
    yMm: yMm + 22,
    widthMm: job.blade.widthMm * scale,
    heightMm: 20,
  }
  const reachMm = Math.min(fingerReachMm * scale, widthMm / 2)
  drawIron(sheet, iron, reachMm, tool.dotCorner)
  const middle = { xMm: xMm + widthMm / 2, withinMm: widthMm, align: 'middle' } as const
  sheet.text(t(scale === 1 ? 'fullSize' : 'halfSize'), { ...middle, baselineMm: yMm + 47, sizeMm: NOTE_MM })
}

const drawIron = (sheet: Sheet, iron: Box, reachMm: number, dotCorner: 'left' | 'right'): void => {
  sheet.shape([rectangle(iron)], true, { fill: 0.94, strokeMm: LINE.outline })
  const [middleMm, measureMm] = [iron.xMm + iron.widthMm / 2, iron.yMm + 8]
  sheet.shape(dimension([middleMm - reachMm, measureMm], [middleMm + reachMm, measureMm], 4), false, {
    strokeMm: LINE.frame,
  })
  const ticks = [-0.5, 0, 0.5].map((share): readonly Point[] => {
    const xMm = middleMm + reachMm * share
    return [
      [xMm, measureMm - 1.6],
      [xMm, measureMm + 1.6],
    ]
  })
  sheet.shape(ticks, false, { strokeMm: LINE.outline })
  const radiusMm = Math.min(1.6, iron.widthMm / 6)
  const inMm = radiusMm * 2
  const dotMm = dotCorner === 'left' ? iron.xMm + inMm : iron.xMm + iron.widthMm - inMm
  dot(sheet, dotMm, iron.yMm + iron.heightMm - inMm, radiusMm)
}
