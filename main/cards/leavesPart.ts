import { expectedLeaves, leavesAlike } from '../../geometry/expectedLeaves.ts'
import { quantities } from '../../geometry/quantities.ts'
import type { CardFacts, Pair } from './facts.ts'
import { dot, LABEL, LINE, NOTE_MM, pairFigure, SECOND_FIGURE_MM, STEEL } from './parts.ts'
import { arc } from './shapes.ts'
import type { Box, Point, Sheet } from './sheet.ts'
import { isStraight } from './straight.ts'

const leafTexts = (leaf: Pair<number>, say: (mm: number) => string): Pair<string> => {
  const { left, right } = leaf
  if (!leavesAlike(leaf)) return { left: say(left), right: say(right) }
  const mean = say((left + right) / 2)
  return { left: mean, right: mean }
}

/** The leaves to expect halfway out and at the corners. */
export const leavesPart = (sheet: Sheet, box: Box, facts: CardFacts): void => {
  const { t, length, tool } = facts
  const { xMm, yMm, widthMm } = box
  const columnMm = (widthMm - 4) / 2
  const leaves = expectedLeaves(facts.report)
  const { decimals } = quantities.aim.reliefMm
  const columns = [
    ['leafHalfway', leaves.halfway, xMm],
    ['leafCorner', leaves.corner, xMm + columnMm + 4],
  ] as const
  for (const [key, leaf, leftMm] of columns) {
    sheet.text(t(key), { ...LABEL, xMm: leftMm, baselineMm: yMm + 5, withinMm: columnMm })
    const room = { xMm: leftMm, widthMm: columnMm, baselineMm: yMm + 18 }
    pairFigure(
      sheet,
      leafTexts(leaf, (mm) => length(mm, decimals).text),
      SECOND_FIGURE_MM,
      room,
    )
  }
  const drawing = { xMm: xMm + 1, yMm: yMm + 25, widthMm: widthMm - 2, heightMm: 16 }
  drawStraightedge(sheet, drawing, tool.dotCorner, isStraight(facts.report))
  const middle = { xMm: xMm + widthMm / 2, withinMm: widthMm, align: 'middle' } as const
  sheet.text(t(leavesAlike(leaves.corner) ? 'leavesAlike' : 'leavesUneven', { unit: length(0, 2).unit }), {
    ...middle,
    baselineMm: yMm + 47,
    sizeMm: NOTE_MM,
  })
}

const drawStraightedge = (sheet: Sheet, box: Box, dotCorner: 'left' | 'right', straight: boolean): void => {
  const { xMm, yMm, widthMm, heightMm } = box
  const [middleMm, radiusMm, floorMm] = [xMm + widthMm / 2, widthMm * (straight ? 1e4 : 0.9), yMm + heightMm]
  const halfRad = Math.asin((widthMm / 2 - 2) / radiusMm)
  const edge = arc(middleMm, yMm + radiusMm, radiusMm, -Math.PI / 2 - halfRad, -Math.PI / 2 + halfRad)
  const [first, last] = [edge[0] as Point, edge.at(-1) as Point]
  sheet.shape([[...edge, [last[0], floorMm], [first[0], floorMm]]], true, { fill: STEEL })
  sheet.shape([edge], false, { strokeMm: LINE.frame })
  sheet.shape(
    [
      [
        [xMm, yMm],
        [xMm + widthMm, yMm],
      ],
    ],
    false,
    { strokeMm: 1.2 },
  )
  for (const share of straight ? [] : [-0.94, -0.5, 0.5, 0.94]) {
    const offMm = (widthMm / 2 - 2) * share
    const toMm = yMm + radiusMm - Math.sqrt(radiusMm * radiusMm - offMm * offMm)
    sheet.shape(
      [
        [
          [middleMm + offMm, yMm],
          [middleMm + offMm, toMm],
        ],
      ],
      false,
      { strokeMm: 1.4 },
    )
  }
  dot(sheet, dotCorner === 'left' ? first[0] + 3.5 : last[0] - 3.5, floorMm - 3)
}
