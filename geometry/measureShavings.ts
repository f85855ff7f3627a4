import { radiusOfRelief } from './aim.ts'
import type { MeasuredEdge } from './measure.ts'
import { readingError } from './measurePoints.ts'
import { failed, ok, problem, type Result } from './result.ts'
import { sin } from './trigonometry.ts'
import { radFromDeg } from './units.ts'

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

/** An arc's rise so far out, as a share of its rise at the corners. */
const arcShare = (outMm: number, widthMm: number): number => ((2 * outMm) / widthMm) ** 2

/** @returns `pointBeyondEdge` where the strip lies off the iron or in its middle */
export const camberOfShavings = (
  { leftMm, middleMm, rightMm, outMm }: Shavings,
  widthMm: number,
  seatAngleDeg: number,
): Result<WoodCamber> => {
  if (!(outMm > 0 && outMm <= widthMm / 2)) return failed(problem('pointBeyondEdge', 'outMm', { point: 1 }))
  const camberMm = middleMm - (leftMm + rightMm) / 2
  const woodReliefMm = camberMm / arcShare(outMm, widthMm)
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
  const share = arcShare(outMm, widthMm) * sin(radFromDeg(seatAngleDeg))
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
