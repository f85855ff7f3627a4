import type { MeasuredEdge } from '../../geometry/measure.ts'
import { type GapPoint, readPoints } from '../../geometry/measurePoints.ts'
import { readShavings } from '../../geometry/measureShavings.ts'
import { FEWEST_PLACES } from '../../geometry/places.ts'
import { ok, type Result } from '../../geometry/result.ts'
import type { BenchLog, BenchLogDraft } from '../../main/contract/entities.ts'
import type { MeasuredCurve } from '../glass/glassLayout.ts'
import { measuredCurve, pointsCurve } from './measuredCurve.ts'
import { edgeOfLeaves, type Leaves, leavesOfLine, spanOf } from './reading.ts'

/** What was read of an edge, in whichever way. */
export interface Taken {
  readonly method: BenchLogDraft['method']
  readonly leaves: Leaves
  /** Gaps by points or a traced profile; by shavings their thicknesses at left, middle and right. */
  readonly points: readonly GapPoint[]
  /** How fine it was read: from the leaf that passes to the next, or the smallest step of the gauge. */
  readonly stepMm: number
}

/** What of an iron a reading needs. */
export interface Iron {
  readonly widthMm: number
  readonly seatAngleDeg: number | null
}

/** What a reading shows. */
export interface Read {
  readonly edge: MeasuredEdge
  /** From where to where the relief may lie. */
  readonly span: readonly [leastMm: number, mostMm: number]
  readonly curve: MeasuredCurve
  /** How far the points lie off the curve through them; null: none is spare. */
  readonly residualSdMm: number | null
}

/** Two standard errors: the relief is hardly ever further off. */
const SPAN_ERRORS = 2

const spanOfErrors = ({ reliefMm, standardErrorMm }: MeasuredEdge): readonly [number, number] => [
  Math.max(0, reliefMm - SPAN_ERRORS * standardErrorMm),
  reliefMm + SPAN_ERRORS * standardErrorMm,
]

const readOfLeaves = ({ leaves, stepMm }: Taken, { widthMm }: Iron): Result<Read> | null => {
  const read = edgeOfLeaves(leaves, stepMm, widthMm)
  if (!read?.ok) return read
  const edge = read.value
  return ok({ edge, span: spanOf(edge, stepMm), curve: measuredCurve(edge, stepMm, widthMm), residualSdMm: null })
}

const readOfPoints = ({ points, stepMm }: Taken, { widthMm }: Iron): Result<Read> | null => {
  if (points.length < FEWEST_PLACES) return null
  const read = readPoints(points, widthMm, stepMm)
  if (!read.ok) return read
  const { edge, levelled, residualSdMm } = read.value
  return ok({ edge, span: spanOfErrors(edge), curve: pointsCurve(edge, levelled, stepMm, widthMm), residualSdMm })
}

const readOfShavings = ({ points, stepMm }: Taken, { widthMm, seatAngleDeg }: Iron): Result<Read> | null => {
  const [left, middle, right] = points
  if (!left || !middle || !right || seatAngleDeg === null) return null
  const shavings = { leftMm: left.gapMm, middleMm: middle.gapMm, rightMm: right.gapMm, outMm: right.uMm }
  const read = readShavings(shavings, widthMm, seatAngleDeg, stepMm)
  if (!read.ok) return read
  const edge = read.value
  const span = spanOfErrors(edge)
  return ok({ edge, span, curve: measuredCurve(edge, span[1] - span[0], widthMm), residualSdMm: null })
}

/** @returns what a reading shows; null while it is not whole */
export const readOf = (taken: Taken, iron: Iron): Result<Read> | null => {
  if (taken.method === 'leaves') return readOfLeaves(taken, iron)
  return taken.method === 'shavings' ? readOfShavings(taken, iron) : readOfPoints(taken, iron)
}

/** @returns what a line of the log showed; null where it shows nothing, because its step is not known or it contradicts itself */
export const readOfLine = (line: BenchLog, iron: Iron): Read | null => {
  if (line.leafStepMm === null) return null
  const taken = { method: line.method, leaves: leavesOfLine(line), points: line.points ?? [], stepMm: line.leafStepMm }
  const read = readOf(taken, iron)
  return read?.ok ? read.value : null
}
