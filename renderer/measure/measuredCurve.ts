import { ARC_RATIO, type MeasuredEdge } from '../../geometry/measure.ts'
import type { GapPoint } from '../../geometry/measurePoints.ts'
import { type Mark, type MeasuredCurve, steps } from '../glass/glassLayout.ts'
import { askewOf, spanOf } from './reading.ts'

/** Points on the curve: smooth at any size it is drawn in. */
const POINTS = 60

/** Power of the distance from the middle that has this ratio halfway out: 2 for an arc, about 1 for a roof. */
const powerOf = (ratio: number): number => Math.log2(1 / ratio)

/** Straight from place to place, for an edge that no one curve follows. */
const throughPlaces = ({ reliefMm, halfwayMm }: MeasuredEdge, half: number): MeasuredCurve['line'] =>
  [reliefMm, halfwayMm ?? 0, 0, halfwayMm ?? 0, reliefMm].map((depthMm, k) => [(k / 2 - 1) * half, depthMm])

const curveThrough = (reliefMm: number, power: number, half: number): MeasuredCurve['line'] =>
  steps(POINTS).map((share) => [share * half, reliefMm * Math.abs(share) ** power])

const lineOfEdge = (edge: MeasuredEdge, half: number): MeasuredCurve['line'] => {
  const { shape, reliefMm, halfwayMm } = edge
  if (askewOf(edge)) return null
  if (shape === 'neither') return throughPlaces(edge, half)
  const known = shape !== null && shape !== 'straight' && halfwayMm !== null
  return curveThrough(reliefMm, powerOf(known ? halfwayMm / reliefMm : ARC_RATIO), half)
}

/**
 * A measured edge as the glass draws it: squares at the leaves that passed, whiskers to the next, and a curve through
 * them. Unequal leaves show no curve, only how far back the corners may lie.
 */
export const measuredCurve = (edge: MeasuredEdge, stepMm: number, widthMm: number): MeasuredCurve => {
  const half = widthMm / 2
  const [leastMm, mostMm] = spanOf(edge, stepMm)
  const corner = (side: number): Mark => ({ uMm: side * half, leastMm, mostMm })
  const halfway = (side: number): readonly Mark[] =>
    edge.halfwayMm === null || askewOf(edge)
      ? []
      : [{ uMm: (side * half) / 2, leastMm: edge.halfwayMm, mostMm: edge.halfwayMm + stepMm }]
  return {
    marks: [corner(-1), ...halfway(-1), ...halfway(1), corner(1)],
    line: lineOfEdge(edge, half),
    taken: edge.shape === null,
  }
}

/** More marks than these run into each other. */
const MOST_MARKS = 33

/** The same for points across: a square at each, as if the straightedge had lain level, and the curve that fits them best. */
export const pointsCurve = (
  edge: MeasuredEdge,
  levelled: readonly GapPoint[],
  stepMm: number,
  widthMm: number,
): MeasuredCurve => {
  const every = Math.ceil(levelled.length / MOST_MARKS)
  const marks = levelled
    .filter((_, i) => i % every === 0)
    .map(({ uMm, gapMm }) => ({ uMm, leastMm: gapMm, mostMm: gapMm + stepMm }))
  return { marks, line: lineOfEdge(edge, widthMm / 2), taken: edge.shape === null }
}
