import { quantities } from '../../geometry/quantities.ts'
import { cos, sin, tan } from '../../geometry/trigonometry.ts'
import { radFromDeg } from '../../geometry/units.ts'
import { figure } from '../contract/figures.ts'
import { type CardFacts, inWords } from './facts.ts'
import { dot, LINE, STEEL } from './parts.ts'
import { arc, arrowHead, circle } from './shapes.ts'
import type { Box, Point, Sheet } from './sheet.ts'

/**
 * Wheel, bar and blade true to each other, seen from the blade's left with the bar straight above the axle. In that view
 * v runs to the right and n downwards, so a wheel that turns clockwise runs up the blade: into the edge.
 */
interface Scene {
  readonly wheelRadiusMm: number
  readonly bar: Point
  readonly blade: readonly Point[]
}

const sceneOf = ({ job, report }: CardFacts): Scene => {
  const wheelRadiusMm = job.station.wheelDiameterMm / 2
  const { projectionMm, bevelAngleDeg } = report.setUp
  const bevelRad = radFromDeg(bevelAngleDeg)
  const { thicknessMm } = job.blade
  const edge: Point = [wheelRadiusMm * sin(bevelRad), -wheelRadiusMm * cos(bevelRad)]
  const bar: Point = [edge[0] + projectionMm, edge[1] + job.fixture.seatOffsetMm]
  const turnRad = -Math.PI / 2 - Math.atan2(bar[1], bar[0])
  const turned = ([x, y]: Point): Point => [
    x * Math.cos(turnRad) - y * Math.sin(turnRad),
    x * Math.sin(turnRad) + y * Math.cos(turnRad),
  ]
  const tailMm = projectionMm * 1.3
  const profile: readonly Point[] = [
    [0, 0],
    [tailMm, 0],
    [tailMm, thicknessMm],
    [thicknessMm / tan(bevelRad), thicknessMm],
  ]
  return { wheelRadiusMm, bar: turned(bar), blade: profile.map(([v, n]) => turned([edge[0] + v, edge[1] + n])) }
}

/** Puts a scene into a box as large as it goes, keeping its proportions. */
const fitting = ({ wheelRadiusMm, bar, blade }: Scene, box: Box, barRadiusMm: number) => {
  const xs = [-wheelRadiusMm, wheelRadiusMm, ...blade.map(([x]) => x)]
  const ys = [wheelRadiusMm, bar[1] - barRadiusMm, -wheelRadiusMm, ...blade.map(([, y]) => y)]
  const [left, top] = [Math.min(...xs), Math.min(...ys)]
  const [wide, high] = [Math.max(...xs) - left, Math.max(...ys) - top]
  const scale = Math.min(box.widthMm / wide, box.heightMm / high)
  const place = ([x, y]: Point): Point => [box.xMm + (x - left) * scale, box.yMm + (y - top) * scale]
  return { scale, place, rightMm: box.xMm + wide * scale }
}

const rotationArrow = (sheet: Sheet, [xMm, yMm]: Point, radiusMm: number, clockwise: boolean): void => {
  const [start, end] = clockwise ? [-2.7, -0.6] : [-0.44, -2.54]
  sheet.shape([arc(xMm, yMm, radiusMm, start, end)], false, { strokeMm: LINE.frame })
  const tip: Point = [xMm + radiusMm * Math.cos(end), yMm + radiusMm * Math.sin(end)]
  const heading = end + (clockwise ? Math.PI / 2 : -Math.PI / 2)
  const ahead: Point = [tip[0] + 2 * Math.cos(heading), tip[1] + 2 * Math.sin(heading)]
  sheet.shape([arrowHead(ahead, heading, 3.6)], true, { fill: 0 })
}

/** How fast and which way the wheel turns against the blade; without a known way, a wheel to draw the arrow on. */
export const turningPart = (sheet: Sheet, { xMm, yMm, widthMm }: Box, facts: CardFacts): void => {
  const { t, tool, job } = facts
  const { wheelSpeedRpm, barDiameterMm } = job.station
  const speed = inWords(figure(wheelSpeedRpm, 'rpm', quantities.station.wheelSpeedRpm.decimals))
  const words = t(`turning_${tool.rotation ?? 'unknown'}`, { speed })
  sheet.text(words, { xMm, baselineMm: yMm + 5, withinMm: widthMm, sizeMm: 5.2, face: 'strong' })
  const scene = sceneOf(facts)
  const { scale, place, rightMm } = fitting(scene, { xMm, yMm: yMm + 9, widthMm: 38, heightMm: 38 }, barDiameterMm / 2)
  const axle = place([0, 0])
  const wheelMm = scene.wheelRadiusMm * scale
  sheet.shape([circle(axle[0], axle[1], wheelMm)], true, { fill: STEEL, strokeMm: LINE.outline })
  sheet.shape([circle(axle[0], axle[1], Math.min(1.2, wheelMm / 4))], true, { fill: 1, strokeMm: LINE.outline })
  const [barX, barY] = place(scene.bar)
  sheet.shape([circle(barX, barY, Math.max(0.6, (barDiameterMm / 2) * scale))], true, {
    fill: 1,
    strokeMm: LINE.outline,
  })
  sheet.shape([scene.blade.map(place)], true, { fill: 0, strokeMm: LINE.outline })
  if (tool.rotation) rotationArrow(sheet, axle, wheelMm * 0.66, tool.rotation === 'intoEdge')
  const noteMm = rightMm + 2
  const note = { xMm: noteMm, baselineMm: yMm + 34, sizeMm: 4.3, withinMm: xMm + widthMm - noteMm }
  const nextMm = sheet.paragraph(t('seenFromLeft'), note, 4)
  if (tool.dotCorner === 'left') dot(sheet, noteMm + 1.6, nextMm - 1)
}
