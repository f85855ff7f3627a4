import { radiusOfRelief } from './aim.ts'
import { linearFit } from './fit.ts'
import { ARC_RATIO, type EdgeShape, type MeasuredEdge, type MeasureNotice, ROOF_RATIO } from './measure.ts'
import { placesAgain, placesEnough } from './places.ts'
import { failed, ok, type Problem, problem, type Result } from './result.ts'

/** A gap under the straightedge, u from the middle. */
export interface GapPoint {
  readonly uMm: number
  readonly gapMm: number
}

/** The edge that best explains the gaps, the straightedge's tilt and offset taken out. */
export interface FittedEdge {
  readonly shape: 'arc' | 'roof'
  readonly reliefMm: number
  /** Null without a spare point. */
  readonly standardErrorMm: number | null
  readonly residualsMm: readonly number[]
  readonly residualSdMm: number | null
  /** Standard error of the relief for gaps known to 1 mm: to scale by how well they are known. */
  readonly unitError: number
  /** How the straightedge lay over the crown: gap = offset + tilt u + what the edge lies back. */
  readonly offsetMm: number
  readonly tilt: number
  /** The same by the other shape: how much worse it fits. */
  readonly otherResidualSdMm: number | null
}

/** Half width of a soft ridge as a share of half the width: sqrt(x^2 + e^2) then has 0.47 of the corner's rise halfway out. */
const RIDGE_SHARE = 0.0624

/** Rise from crown to corner, 0 to 1, at a share x of half the width. */
const shapes = {
  arc: (x: number): number => x * x,
  roof: (x: number): number =>
    (Math.sqrt(x * x + RIDGE_SHARE ** 2) - RIDGE_SHARE) / (Math.sqrt(1 + RIDGE_SHARE ** 2) - RIDGE_SHARE),
} as const

/** gap = offset + tilt u + relief shape(2 u / w), linear in all three. */
const fitShape = (points: readonly GapPoint[], widthMm: number, shape: keyof typeof shapes) =>
  linearFit(
    points.map(({ uMm }) => [1, uMm, shapes[shape]((2 * uMm) / widthMm)]),
    points.map(({ gapMm }) => gapMm),
  )

/**
 * Relief from gaps at many places by least squares; the shape that leaves the lesser residuals, arc when none is spare.
 * @returns `fitSingular` with fewer than three different places, `pointBeyondEdge` for one off the iron
 */
export const fitPoints = (points: readonly GapPoint[], widthMm: number): Result<FittedEdge> => {
  const beyond = points.findIndex(({ uMm, gapMm }) => !(Math.abs(uMm) <= widthMm / 2 && gapMm >= 0))
  if (beyond >= 0) return failed(problem('pointBeyondEdge', `points.${beyond}`, { point: beyond + 1 }))
  const [arc, roof] = [fitShape(points, widthMm, 'arc'), fitShape(points, widthMm, 'roof')]
  if (!arc.ok) return arc
  if (!roof.ok) return roof
  const isRoof = (roof.value.residualSd ?? 0) < (arc.value.residualSd ?? 0)
  const [best, other] = isRoof ? [roof.value, arc.value] : [arc.value, roof.value]
  return ok({
    shape: isRoof ? 'roof' : 'arc',
    reliefMm: best.values[2] as number,
    standardErrorMm: best.standardErrors?.[2] ?? null,
    residualsMm: best.residuals,
    residualSdMm: best.residualSd,
    unitError: best.unitErrors[2] as number,
    offsetMm: best.values[0] as number,
    tilt: best.values[1] as number,
    otherResidualSdMm: other.residualSd,
  })
}

/** Points as an edge: what it is, and the gaps with tilt and offset taken out, as if the straightedge had lain level on the crown. */
export interface PointsEdge {
  readonly edge: MeasuredEdge
  readonly levelled: readonly GapPoint[]
  readonly residualSdMm: number | null
}

/** A gap read to a step may lie anywhere in it. */
export const readingError = (stepMm: number): number => stepMm / Math.sqrt(12)
/** The other shape must fit worse by this much, or the points do not tell the two apart. */
const SHAPE_TOLD = 1.3
/** Residuals of more than this many steps are no reading error: the points contradict each other, or the edge is of another shape. */
const SCATTER_STEPS = 2

const shapeTold = (fit: FittedEdge, stepMm: number): EdgeShape | null => {
  if (fit.reliefMm < stepMm) return 'straight'
  const known = Math.max(fit.residualSdMm ?? 0, readingError(stepMm))
  return fit.otherResidualSdMm !== null && fit.otherResidualSdMm > SHAPE_TOLD * known ? fit.shape : null
}

const scatter = ({ residualSdMm }: FittedEdge, stepMm: number): readonly MeasureNotice[] =>
  residualSdMm !== null && residualSdMm > SCATTER_STEPS * stepMm
    ? [{ code: 'pointsScatter', params: { residualMm: residualSdMm } }]
    : []

/** Share of half the width that the outermost place must reach, or a quarter of the relief and less stands for all of it. */
const REACH_SHARE = 0.5

const nearMiddle = (points: readonly GapPoint[], widthMm: number): readonly MeasureNotice[] => {
  const outMm = points.reduce((most, { uMm }) => Math.max(most, Math.abs(uMm)), 0)
  const halfMm = widthMm / 2
  return outMm < REACH_SHARE * halfMm ? [{ code: 'pointsNearMiddle', params: { outMm, halfMm } }] : []
}

/** A hollow must stand clear of the scatter by so many of its standard errors. */
const HOLLOW_ERRORS = 2

/** Corners forward of the middle: a hollow, or points that scatter too much to tell one. */
const notConvex = (fit: FittedEdge, stepMm: number): Problem | null => {
  if (fit.reliefMm >= -stepMm) return null
  const [scattered] = scatter(fit, stepMm)
  return scattered && -fit.reliefMm < HOLLOW_ERRORS * (fit.standardErrorMm ?? 0)
    ? problem(scattered.code, 'points', scattered.params)
    : problem('edgeHollow', 'points', { byMm: -fit.reliefMm })
}

const edgeOfFit = (fit: FittedEdge, points: readonly GapPoint[], widthMm: number, stepMm: number): MeasuredEdge => {
  const reliefMm = Math.max(0, fit.reliefMm)
  const shape = shapeTold(fit, stepMm)
  return {
    reliefLeftMm: reliefMm,
    reliefRightMm: reliefMm,
    reliefMm,
    halfwayMm: reliefMm * (shape === 'roof' ? ROOF_RATIO : ARC_RATIO),
    shape,
    radiusMm: shape === 'straight' ? null : radiusOfRelief(widthMm, reliefMm),
    standardErrorMm: fit.unitError * Math.max(fit.residualSdMm ?? 0, readingError(stepMm)),
    notices: [...scatter(fit, stepMm), ...nearMiddle(points, widthMm), ...placesAgain(points)],
  }
}

/**
 * The edge that gaps at many places show, read to a step. Its error is that of the readings, or what the points scatter if that is more.
 * @returns `placesTooFew`, `pointBeyondEdge`, `edgeHollow` where the corners stand further forward than the middle,
 * `pointsScatter` where they seem to only because the points contradict each other
 */
export const readPoints = (points: readonly GapPoint[], widthMm: number, stepMm: number): Result<PointsEdge> => {
  if (!placesEnough(points)) return failed(problem('placesTooFew', 'points'))
  const fitted = fitPoints(points, widthMm)
  if (!fitted.ok) return fitted
  const fit = fitted.value
  const wrong = notConvex(fit, stepMm)
  if (wrong) return failed(wrong)
  return ok({
    edge: edgeOfFit(fit, points, widthMm, stepMm),
    levelled: points.map(({ uMm, gapMm }) => ({ uMm, gapMm: gapMm - fit.offsetMm - fit.tilt * uMm })),
    residualSdMm: fit.residualSdMm,
  })
}
