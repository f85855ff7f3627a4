import { quantities } from '../../geometry/quantities.ts'
import type { CardFacts } from './facts.ts'
import { FIGURE_BASELINE_MM, figureText, frame, LINE, MAIN_FIGURE_MM, STEEL } from './parts.ts'
import { arc, circle, dimension } from './shapes.ts'
import type { Box, Point, Sheet } from './sheet.ts'

/** The first two boxes, in the order of the work: projection and bar. Drawings are schematic; figures are the job's. */

const largeFigure = (sheet: Sheet, box: Box, text: string): void => {
  const place = { xMm: box.xMm + box.widthMm / 2, baselineMm: box.yMm + FIGURE_BASELINE_MM } as const
  figureText(sheet, text, MAIN_FIGURE_MM, { ...place, withinMm: box.widthMm - 4, align: 'middle' })
}

const drawProjection = (sheet: Sheet, box: Box, barBelow: boolean): void => {
  const side = barBelow ? 1 : -1
  const backMm = box.yMm + 57
  const [edgeMm, barMm, tailMm] = [box.xMm + 6, box.xMm + 48, box.xMm + 64]
  const blade: readonly Point[] = [
    [edgeMm, backMm],
    [tailMm, backMm],
    [tailMm, backMm + 2.4],
    [edgeMm + 5, backMm + 2.4],
  ]
  sheet.shape([blade], true, { fill: STEEL, strokeMm: LINE.outline })
  const barAxisMm = backMm + (barBelow ? 9 : -7)
  sheet.shape([circle(barMm, barAxisMm, 3)], true, { fill: 1, strokeMm: LINE.outline })
  const measureMm = backMm - side * 8 + (barBelow ? 0 : 2)
  sheet.shape(
    [
      [
        [barMm, barAxisMm + side * 5],
        [barMm, measureMm],
      ],
    ],
    false,
    { strokeMm: LINE.measure, dashMm: [2, 0.7, 0.5, 0.7] },
  )
  sheet.shape(
    [
      [
        [edgeMm, backMm - side],
        [edgeMm, measureMm],
      ],
    ],
    false,
    { strokeMm: LINE.measure },
  )
  sheet.shape(dimension([edgeMm, measureMm], [barMm, measureMm]), false, { strokeMm: LINE.outline })
}

/** Box 1: projection, along the back from the bar's axis to the edge. */
export const projectionBox = (sheet: Sheet, box: Box, { t, report, job, length }: CardFacts): void => {
  const { text, unit } = length(report.setUp.projectionMm, quantities.aim.projectionMm.decimals)
  const barBelow = job.fixture.seatOffsetMm > 0
  frame(sheet, box, 1, t('projection'), unit)
  largeFigure(sheet, box, text)
  drawProjection(sheet, box, barBelow)
  const baselineMm = box.yMm + (barBelow ? 44 : 74)
  sheet.text(t('projectionNote'), { xMm: box.xMm + 5, baselineMm, sizeMm: 4.4, withinMm: box.widthMm - 8 })
}

/** Drawn radii of wheel and bar, and the gap between them. */
const DRAWN = { wheelMm: 24, barMm: 3.4, gapMm: 11 } as const
/** The bar is drawn no further to the side than this, so that it stays in its box. */
const STEEPEST_DRAWN_RAD = 0.45

const drawBar = (sheet: Sheet, box: Box, tiltRad: number): void => {
  const [axisMm, topMm, floorMm] = [box.xMm + 25, box.yMm + 61, box.yMm + 77]
  const centreMm = topMm + DRAWN.wheelMm
  const at = (radiusMm: number): Point => [
    axisMm + radiusMm * Math.sin(tiltRad),
    centreMm - radiusMm * Math.cos(tiltRad),
  ]
  const chordRad = Math.asin((centreMm - floorMm) / DRAWN.wheelMm)
  const cap = arc(axisMm, centreMm, DRAWN.wheelMm, Math.PI + chordRad, 2 * Math.PI - chordRad)
  sheet.shape([cap], true, { fill: STEEL, strokeMm: LINE.outline })
  const bar = at(DRAWN.wheelMm + DRAWN.gapMm + DRAWN.barMm)
  sheet.shape([circle(bar[0], bar[1], DRAWN.barMm)], true, { fill: 1, strokeMm: LINE.outline })
  sheet.shape(dimension(at(DRAWN.wheelMm), at(DRAWN.wheelMm + DRAWN.gapMm), 2.4), false, { strokeMm: LINE.outline })
  const heightMm = box.xMm + 42
  const leaders: readonly (readonly Point[])[] = [
    [
      [bar[0] + 4.4, bar[1]],
      [heightMm + 2, bar[1]],
    ],
    [
      [axisMm + 3, topMm],
      [heightMm + 2, topMm],
    ],
  ]
  sheet.shape(leaders, false, { strokeMm: LINE.measure })
  sheet.shape(dimension([heightMm, bar[1]], [heightMm, topMm]), false, { strokeMm: LINE.measure })
}

/** Box 2: the bar, as the gap between its surface and the wheel's and as its axis's height over the wheel's top. */
export const barBox = (sheet: Sheet, box: Box, { t, report, job, length }: CardFacts): void => {
  const { gapMm, barHeightMm, barDistanceMm } = report.setUp
  const { decimals } = quantities.aim.barDistanceMm
  const gap = length(gapMm, decimals)
  frame(sheet, box, 2, t('bar'), gap.unit)
  largeFigure(sheet, box, gap.text)
  drawBar(sheet, box, Math.min(STEEPEST_DRAWN_RAD, Math.asin(job.station.barOffsetMm / barDistanceMm)))
  const place = { xMm: box.xMm + 46, withinMm: box.widthMm - 48 } as const
  const nextMm = sheet.paragraph(t('barNote'), { ...place, baselineMm: box.yMm + 47, sizeMm: 4.4 }, 3)
  figureText(sheet, length(barHeightMm, decimals).text, 6, { ...place, baselineMm: nextMm + 3 })
}
