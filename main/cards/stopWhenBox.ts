import { quantities } from '../../geometry/quantities.ts'
import type { CardFacts } from './facts.ts'
import { dot, FIGURE_BASELINE_MM, figureText, frame, LINE, MAIN_FIGURE_MM, STEEL } from './parts.ts'
import { dimension, rectangle } from './shapes.ts'
import type { Box, Point, Sheet } from './sheet.ts'
import { isStraight } from './straight.ts'

/** Height of the edge over its corners in the drawing, which is not to scale. */
const DRAWN_CAMBER_MM = 4

/** Teeth of the burr along the edge, over a gentle curve. */
const burrLine = (xMm: number, yMm: number, widthMm: number, camberMm: number): readonly (readonly Point[])[] => {
  const teeth = 28
  const heightAt = (share: number) => yMm - camberMm * (1 - (2 * share - 1) ** 2)
  const edge = Array.from({ length: teeth + 1 }, (_, i): Point => [xMm + (widthMm * i) / teeth, heightAt(i / teeth)])
  const burr = edge.map(([x, y], i): Point => [x, y - 1.6 - (i % 2) * 1.3])
  return [edge, burr]
}

const burrPart = (sheet: Sheet, box: Box, { t, tool, report }: CardFacts): void => {
  const straight = isStraight(report)
  const text = { xMm: box.xMm + 4, withinMm: box.widthMm - 8 } as const
  sheet.paragraph(t('burrAllAlong'), { ...text, baselineMm: box.yMm + 23, sizeMm: 14, face: 'strong' }, 2)
  const body = { xMm: box.xMm + 5, yMm: box.yMm + 55, widthMm: box.widthMm - 10, heightMm: 9 }
  const [edge, burr] = burrLine(body.xMm, body.yMm, body.widthMm, straight ? 0 : DRAWN_CAMBER_MM) as [Point[], Point[]]
  const floorMm = body.yMm + body.heightMm
  sheet.shape([[...edge, [body.xMm + body.widthMm, floorMm], [body.xMm, floorMm]]], true, { fill: STEEL })
  sheet.shape([edge], false, { strokeMm: LINE.frame })
  sheet.shape([burr], false, { strokeMm: LINE.measure })
  dot(sheet, tool.dotCorner === 'left' ? body.xMm + 4 : body.xMm + body.widthMm - 4, floorMm - 4)
  const note = t(straight ? 'noLight' : 'leavesPass')
  sheet.paragraph(note, { ...text, baselineMm: box.yMm + 70, sizeMm: 5 }, 2)
}

const bandPart = (sheet: Sheet, box: Box, facts: CardFacts): void => {
  const { t, tool, job, length } = facts
  const { text } = length(job.aim.bandMm, quantities.aim.bandMm.decimals)
  const place = { baselineMm: box.yMm + FIGURE_BASELINE_MM, withinMm: box.widthMm - 4, align: 'middle' } as const
  figureText(sheet, text, MAIN_FIGURE_MM, { ...place, xMm: box.xMm + box.widthMm / 2 })
  const note = { xMm: box.xMm + 4, baselineMm: box.yMm + 40, sizeMm: 5, withinMm: box.widthMm - 8 }
  sheet.paragraph(t('bandNote'), note, 3)
  const bevel = { xMm: box.xMm + 5, yMm: box.yMm + 55, widthMm: box.widthMm - 10, heightMm: 19 }
  const band = { ...bevel, heightMm: 6 }
  sheet.shape([rectangle(bevel)], true, { fill: STEEL, strokeMm: LINE.outline })
  sheet.shape([rectangle(band)], true, { fill: 1, strokeMm: LINE.outline })
  for (const share of [0.08, 0.5, 0.92]) {
    const xMm = bevel.xMm + bevel.widthMm * share
    sheet.shape(dimension([xMm, bevel.yMm], [xMm, bevel.yMm + band.heightMm]), false, { strokeMm: LINE.outline })
  }
  dot(sheet, tool.dotCorner === 'left' ? bevel.xMm + 4 : bevel.xMm + bevel.widthMm - 4, bevel.yMm + 14)
}

/** Box 4: what tells that the work is done: the burr when reshaping, the band left at the edge when freshening. */
export const stopWhenBox = (sheet: Sheet, box: Box, facts: CardFacts): void => {
  const freshen = facts.job.aim.task === 'freshen'
  const unit = freshen ? facts.length(facts.job.aim.bandMm, 1).unit : ''
  frame(sheet, box, 4, facts.t('stopWhen'), unit)
  if (freshen) bandPart(sheet, box, facts)
  else burrPart(sheet, box, facts)
}
