import type { Box, Point } from './sheet.ts'

/** Outlines of plain shapes, as points; lengths in mm, angles in radians, y downwards. */

/** Segments of a full circle: at 25 mm radius the chord strays 0.01 mm, thinner than any line here. */
const CIRCLE_SEGMENTS = 120

/** @returns points on an arc from one angle to another, 0 to the right and growing clockwise as seen */
export const arc = (xMm: number, yMm: number, radiusMm: number, fromRad: number, toRad: number): readonly Point[] => {
  const segments = Math.max(2, Math.ceil((Math.abs(toRad - fromRad) / (2 * Math.PI)) * CIRCLE_SEGMENTS))
  return Array.from({ length: segments + 1 }, (_, i): Point => {
    const angleRad = fromRad + ((toRad - fromRad) * i) / segments
    return [xMm + radiusMm * Math.cos(angleRad), yMm + radiusMm * Math.sin(angleRad)]
  })
}

export const circle = (xMm: number, yMm: number, radiusMm: number): readonly Point[] =>
  arc(xMm, yMm, radiusMm, 0, 2 * Math.PI)

export const rectangle = ({ xMm, yMm, widthMm, heightMm }: Box): readonly Point[] => [
  [xMm, yMm],
  [xMm + widthMm, yMm],
  [xMm + widthMm, yMm + heightMm],
  [xMm, yMm + heightMm],
]

/** A measure between two points, with a plain tick across each end. @param tickMm half length of a tick */
export const dimension = (from: Point, to: Point, tickMm = 1.4): readonly (readonly Point[])[] => {
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (lengthMm === 0) return [[from, to]]
  const across: Point = [(-(to[1] - from[1]) / lengthMm) * tickMm, ((to[0] - from[0]) / lengthMm) * tickMm]
  const tick = ([x, y]: Point): readonly Point[] => [
    [x - across[0], y - across[1]],
    [x + across[0], y + across[1]],
  ]
  return [[from, to], tick(from), tick(to)]
}

/** A filled head for an arrow. @param headingRad where it points */
export const arrowHead = ([xMm, yMm]: Point, headingRad: number, lengthMm: number): readonly Point[] => {
  const behind = (turnRad: number): Point => [
    xMm - lengthMm * Math.cos(headingRad + turnRad),
    yMm - lengthMm * Math.sin(headingRad + turnRad),
  ]
  return [[xMm, yMm], behind(0.5), behind(-0.5)]
}
