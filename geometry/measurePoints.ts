import { linearFit } from './fit.ts'
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
    otherResidualSdMm: other.residualSd,
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
