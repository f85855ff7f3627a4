import { radiusOfRelief } from './aim.ts'
import { quantities } from './quantities.ts'
import { failed, ok, type Problem, problem, type Result } from './result.ts'

/** Leaves slid under a straightedge that touches the crown: the thickest that pass at each place. */
export interface LeafReading {
  readonly widthMm: number
  readonly cornerLeftMm: number
  readonly cornerRightMm: number
  /** Halfway from the middle to the corner; null: not taken. */
  readonly halfwayLeftMm: number | null
  readonly halfwayRightMm: number | null
  /** To the next thicker leaf, which does not pass. */
  readonly stepMm: number
}

/** What a user should know of a reading; words under `problems:<code>`. */
export interface MeasureNotice {
  readonly code: string
  readonly params: Problem['params']
}

export type EdgeShape = 'straight' | 'arc' | 'roof' | 'between' | 'neither'

/** An edge as measured. Left and right are equal unless they can be told apart, which a straightedge cannot. */
export interface MeasuredEdge {
  readonly reliefLeftMm: number
  readonly reliefRightMm: number
  readonly reliefMm: number
  readonly halfwayMm: number | null
  /** Null: not taken, or the leaves are too coarse or too unequal to tell. */
  readonly shape: EdgeShape | null
  /** Of the arc through corners and crown, ((w/2)^2 + s^2) / (2 s); null for a straight edge. */
  readonly radiusMm: number | null
  readonly standardErrorMm: number
  readonly notices: readonly MeasureNotice[]
}

/** Halfway out an arc has a quarter of the corner's relief. */
export const ARC_RATIO = 0.25
/** A ridge formed by two stops, soft as the engine leaves it: see MODEL.md and tests/geometry/measure.test.ts. */
export const ROOF_RATIO = 0.47
/** Leaves typed in hundredths that lie just a step apart may be off it by rounding: 0.51 - 0.49 > 0.02 (mm). */
const DUST_MM = 1e-9
/** Ratios nearer than this to a shape are called it: a quarter of the way between the two. */
const RATIO_TOLERANCE = 0.055

type Place = 'cornerLeftMm' | 'cornerRightMm' | 'halfwayLeftMm' | 'halfwayRightMm' | 'widthMm' | 'stepMm'
const PLACES: readonly Place[] = [
  'widthMm',
  'cornerLeftMm',
  'cornerRightMm',
  'halfwayLeftMm',
  'halfwayRightMm',
  'stepMm',
]

const rangeOf = (place: Place) => {
  if (place === 'widthMm') return quantities.blade.widthMm
  return place === 'stepMm' ? quantities.measure.stepMm : quantities.measure.leafMm
}

const outside = (reading: LeafReading): readonly Problem[] =>
  PLACES.flatMap((place) => {
    const value = reading[place]
    const { min, max } = rangeOf(place)
    if (value === null) return []
    if (!(value >= min)) return [problem('tooSmall', place, { min })]
    return value > max ? [problem('tooLarge', place, { max })] : []
  })

/** Mean of what was taken halfway; null: nothing was. */
const halfwayOf = ({ halfwayLeftMm, halfwayRightMm }: LeafReading): number | null => {
  if (halfwayLeftMm === null) return halfwayRightMm
  return halfwayRightMm === null ? halfwayLeftMm : (halfwayLeftMm + halfwayRightMm) / 2
}

/** What cannot be true of one edge under one straightedge, however it lay. */
const contradiction = (reading: LeafReading, meanMm: number): Problem | null => {
  if (meanMm > reading.widthMm / 2) return problem('reliefTooGreat', 'cornerLeftMm', { most: reading.widthMm / 2 })
  const halfwayMm = halfwayOf(reading)
  if (halfwayMm === null || halfwayMm <= meanMm + reading.stepMm + DUST_MM) return null
  return problem('halfwayMoreThanCorner', 'halfwayLeftMm', { halfwayMm, cornerMm: meanMm })
}

interface Shaped {
  readonly shape: EdgeShape | null
  readonly notices: readonly MeasureNotice[]
}

/** The shape that a ratio halfway / corner stands for; `neither` is a hollow, or a straight edge with eased corners. */
export const shapeOfRatio = (ratio: number): EdgeShape => {
  if (Math.abs(ratio - ARC_RATIO) <= RATIO_TOLERANCE) return 'arc'
  if (Math.abs(ratio - ROOF_RATIO) <= RATIO_TOLERANCE) return 'roof'
  return ratio > ARC_RATIO && ratio < ROOF_RATIO ? 'between' : 'neither'
}

const shapeOf = ({ stepMm }: LeafReading, halfwayMm: number | null, cornerMm: number): Shaped => {
  if (cornerMm === 0) return { shape: 'straight', notices: [{ code: 'straightWithinLeaf', params: { stepMm } }] }
  if (halfwayMm === null) return { shape: null, notices: [] }
  const ratio = halfwayMm / cornerMm
  const doubt = (stepMm / cornerMm) * Math.sqrt((1 + ratio * ratio) / 12)
  const notices = [{ code: 'leavesTooCoarseForShape', params: { stepMm } }]
  return doubt > (ROOF_RATIO - ARC_RATIO) / 2 ? { shape: null, notices } : { shape: shapeOfRatio(ratio), notices: [] }
}

/**
 * Relief that a straightedge lying askew leaves open, for an edge alike left and right. On an arc it touches away from the
 * crown by a share q of half the width: the corners gauge s (1 - q)^2 and s (1 + q)^2, so s = ((sqrt a + sqrt b) / 2)^2;
 * resting on a corner, 0 and 4 s, double in the mean. On a sharp roof it turns about the ridge: s = (a + b) / 2.
 * Any convex edge between the two lies between.
 */
export const askewRange = (aMm: number, bMm: number): readonly [leastMm: number, mostMm: number] => {
  const meanMm = (aMm + bMm) / 2
  return [(meanMm + Math.sqrt(aMm * bMm)) / 2, meanMm]
}

const measured = (reading: LeafReading, reliefMm: number, standardErrorMm: number, shaped: Shaped): MeasuredEdge => ({
  reliefLeftMm: reliefMm,
  reliefRightMm: reliefMm,
  reliefMm,
  halfwayMm: halfwayOf(reading),
  shape: shaped.shape,
  radiusMm: reliefMm === 0 ? null : radiusOfRelief(reading.widthMm, reliefMm),
  standardErrorMm,
  notices: shaped.notices,
})

/** Distance from the leaf that passes of a gap that may lie anywhere up to the next: root mean square, step / sqrt 3. */
const leafError = (stepMm: number): number => stepMm / Math.sqrt(3)

const askew = (reading: LeafReading): MeasuredEdge => {
  const { cornerLeftMm: leftMm, cornerRightMm: rightMm, stepMm } = reading
  const [leastMm, mostMm] = askewRange(leftMm, rightMm)
  const spread = (mostMm - leastMm) / Math.sqrt(12)
  const error = Math.sqrt(leafError(stepMm) ** 2 + spread ** 2)
  const rests = Math.min(leftMm, rightMm) === 0
  const notices = [{ code: rests ? 'restsOnCorner' : 'leavesUnequal', params: { leftMm, rightMm, leastMm, mostMm } }]
  return measured(reading, (leastMm + mostMm) / 2, error, { shape: null, notices })
}

/**
 * The edge that leaves show. Leaves further apart than a step only show how the straightedge lay; then the relief is told
 * as a range and nothing of the shape. The relief is the leaf that passes: the gap may be a step more, never less.
 * @returns `halfwayMoreThanCorner`, `reliefTooGreat`, `tooSmall`, `tooLarge` with the reading's own key as path
 */
export const readLeaves = (reading: LeafReading): Result<MeasuredEdge> => {
  const problems = outside(reading)
  if (problems.length > 0) return failed(...problems)
  const { cornerLeftMm, cornerRightMm, stepMm } = reading
  const meanMm = (cornerLeftMm + cornerRightMm) / 2
  const wrong = contradiction(reading, meanMm)
  if (wrong !== null) return failed(wrong)
  if (Math.abs(cornerLeftMm - cornerRightMm) > stepMm + DUST_MM) return ok(askew(reading))
  return ok(measured(reading, meanMm, leafError(stepMm), shapeOf(reading, halfwayOf(reading), meanMm)))
}
