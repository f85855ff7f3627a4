import type { SetUp } from '../../geometry/setUp.ts'

/** A place in the drawing's plane: mm from the wheel's axis, x to the right, y up. */
export type Point = readonly [xMm: number, yMm: number]

/** The triangle seen along the axles, the blade to the right, with what is drawn on it. */
export interface Triangle {
  readonly bar: Point
  readonly edge: Point
  readonly wheelTop: Point
  /** A place on the blade: v up the blade from the edge, n from the back towards the bevel. */
  onBlade(vMm: number, nMm: number): Point
  /** Point on the line from the wheel's axis to the bar's, at a distance from the wheel's axis. */
  towardsBar(distanceMm: number): Point
}

/**
 * Lays the triangle of a set-up into the plane, operator to the right. The bar stands above the axle, `barOffsetMm` towards
 * the operator, as in the scene and on the card; the edge touches the rim to the right of the line between them.
 */
export const triangleOf = (setUp: SetUp, barOffsetMm: number): Triangle => {
  const { wheelRadiusMm: R, barDistanceMm: C, projectionMm: P, seatOffsetMm: o } = setUp
  const bar: Point = [barOffsetMm, Math.sqrt(C * C - barOffsetMm * barOffsetMm)]
  const reach = P * P + o * o
  const atAxle = Math.acos((C * C + R * R - reach) / (2 * C * R))
  const upright = Math.atan2(bar[1], bar[0])
  const edge: Point = [R * Math.cos(upright - atAxle), R * Math.sin(upright - atAxle)]
  // The bar is at (v, n) = (P, o); n points to the left of v, towards the wheel.
  const along = Math.atan2(bar[1] - edge[1], bar[0] - edge[0]) - Math.atan2(o, P)
  const [vx, vy] = [Math.cos(along), Math.sin(along)]
  return {
    bar,
    edge,
    wheelTop: [0, R],
    onBlade: (vMm, nMm) => [edge[0] + vMm * vx - nMm * vy, edge[1] + vMm * vy + nMm * vx],
    towardsBar: (distanceMm) => [(bar[0] * distanceMm) / C, (bar[1] * distanceMm) / C],
  }
}
