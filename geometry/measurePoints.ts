import { radiusOfRelief } from './aim.ts'
import { linearFit } from './fit.ts'
import { ARC_RATIO, type EdgeShape, type MeasuredEdge, type MeasureNotice, ROOF_RATIO } from './measure.ts'
import { failed, ok, problem, type Result } from './result.ts'
import { sin } from './trigonometry.ts'
import { radFromDeg } from './units.ts'

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
const readingError = (stepMm: number): number => stepMm / Math.sqrt(12)
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

const edgeOfFit = (fit: FittedEdge, widthMm: number, stepMm: number): MeasuredEdge => {
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
    notices: scatter(fit, stepMm),
  }
}

/**
 * The edge that gaps at many places show, read to a step. Its error is that of the readings, or what the points scatter if that is more.
 * @returns `fitSingular`, `pointBeyondEdge`, `edgeHollow` where the corners stand further forward than the middle
 */
export const readPoints = (points: readonly GapPoint[], widthMm: number, stepMm: number): Result<PointsEdge> => {
  const fitted = fitPoints(points, widthMm)
  if (!fitted.ok) return fitted
  const fit = fitted.value
  if (fit.reliefMm < -stepMm) return failed(problem('edgeHollow', 'points', { byMm: -fit.reliefMm }))
  return ok({
    edge: edgeOfFit(fit, widthMm, stepMm),
    levelled: points.map(({ uMm, gapMm }) => ({ uMm, gapMm: gapMm - fit.offsetMm - fit.tilt * uMm })),
    residualSdMm: fit.residualSdMm,
  })
}

/** Three shavings from a narrow strip, planed at the left, in the middle, at the right of the iron, `outMm` from the middle. */
export interface Shavings {
  readonly leftMm: number
  readonly middleMm: number
  readonly rightMm: number
  readonly outMm: number
}

/** The camber that the wood gets; tilt of the lever taken out by the mean of left and right. */
export interface WoodCamber {
  /** Middle less the mean of the sides, at `outMm`. */
  readonly camberMm: number
  /** As an arc out to the corners, and through the seat in the plane of the back. */
  readonly woodReliefMm: number
  readonly reliefMm: number
}

/** @returns `pointBeyondEdge` where the strip lies off the iron or in its middle */
export const camberOfShavings = (
  { leftMm, middleMm, rightMm, outMm }: Shavings,
  widthMm: number,
  seatAngleDeg: number,
): Result<WoodCamber> => {
  if (!(outMm > 0 && outMm <= widthMm / 2)) return failed(problem('pointBeyondEdge', 'outMm', { point: 1 }))
  const camberMm = middleMm - (leftMm + rightMm) / 2
  const woodReliefMm = camberMm / shapes.arc((2 * outMm) / widthMm)
  return ok({ camberMm, woodReliefMm, reliefMm: woodReliefMm / sin(radFromDeg(seatAngleDeg)) })
}

/** Shavings that differ by more steps than this from side to side show that the lever had turned the iron. */
const LEVER_STEPS = 2

/**
 * The edge that three shavings show, their thickness read to a step.
 * @returns `pointBeyondEdge`, `edgeHollow` where the sides come out thicker than the middle
 */
export const readShavings = (
  shavings: Shavings,
  widthMm: number,
  seatAngleDeg: number,
  stepMm: number,
): Result<MeasuredEdge> => {
  const wood = camberOfShavings(shavings, widthMm, seatAngleDeg)
  if (!wood.ok) return wood
  const { reliefMm, camberMm } = wood.value
  if (camberMm < -stepMm) return failed(problem('edgeHollow', 'middleMm', { byMm: -reliefMm }))
  const { leftMm, rightMm, outMm } = shavings
  const share = shapes.arc((2 * outMm) / widthMm) * sin(radFromDeg(seatAngleDeg))
  const straight = camberMm < stepMm
  const kept = Math.max(0, reliefMm)
  const askew = Math.abs(leftMm - rightMm) > LEVER_STEPS * stepMm
  return ok({
    reliefLeftMm: kept,
    reliefRightMm: kept,
    reliefMm: kept,
    halfwayMm: null,
    shape: straight ? 'straight' : null,
    radiusMm: straight ? null : radiusOfRelief(widthMm, kept),
    standardErrorMm: (readingError(stepMm) * Math.sqrt(3 / 2)) / share,
    notices: askew ? [{ code: 'leverAskew', params: { leftMm, rightMm } }] : [],
  })
}
