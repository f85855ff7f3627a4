import { radiusOfRelief } from './aim.ts'
import { failed, ok, type Problem, problem, type Result } from './result.ts'

/**
 * The line that an edge should follow, as v over u, 0 at its foremost and the relief at both corners:
 *
 *     arc           of a circle
 *     parabola      an arc as good as, and the easier one to build on
 *     easedCorners  straight over the middle share of the width, then bending back like a parabola to the corners, so that
 *                   nothing shows where straight and curve meet
 */
export type AimCurve =
  | { readonly kind: 'arc' | 'parabola'; readonly reliefMm: number }
  | { readonly kind: 'easedCorners'; readonly reliefMm: number; readonly flatShare: number }

/** v of a curve at a place across, u from the centre line. */
export type CurveAt = (uMm: number) => number

/** Widest middle that leaves corners to ease: a twentieth of the width on each side. */
const MOST_FLAT_SHARE = 0.9

const wrongIn = (curve: AimCurve, widthMm: number): Problem | null => {
  const most = widthMm / 2
  if (!(curve.reliefMm >= 0)) return problem('tooSmall', 'aim.reliefMm', { min: 0 })
  if (!(curve.reliefMm <= most)) return problem('reliefTooGreat', 'aim.reliefMm', { most })
  if (curve.kind !== 'easedCorners') return null
  if (!(curve.flatShare >= 0)) return problem('tooSmall', 'aim.flatShare', { min: 0 })
  return curve.flatShare <= MOST_FLAT_SHARE ? null : problem('tooLarge', 'aim.flatShare', { max: MOST_FLAT_SHARE })
}

/** r - sqrt(r^2 - u^2), written so that a shallow arc loses no figures. */
const arcAt = (radiusMm: number): CurveAt => {
  return (uMm) => (uMm * uMm) / (radiusMm + Math.sqrt(Math.max(radiusMm * radiusMm - uMm * uMm, 0)))
}

/** 0 up to the flat's end, then a parabola that starts level and is the relief at the corner. */
const easedAt = (reliefMm: number, flatMm: number, halfMm: number): CurveAt => {
  return (uMm) => {
    const beyond = Math.max(Math.abs(uMm) - flatMm, 0) / (halfMm - flatMm)
    return reliefMm * beyond * beyond
  }
}

/** The curve over an edge of some width. Refused: a relief or a middle share that no edge can have. */
export const aimCurveOver = (curve: AimCurve, widthMm: number): Result<CurveAt> => {
  const wrong = wrongIn(curve, widthMm)
  if (wrong !== null) return failed(wrong)
  const { reliefMm } = curve
  const halfMm = widthMm / 2
  if (reliefMm === 0) return ok(() => 0)
  if (curve.kind === 'arc') return ok(arcAt(radiusOfRelief(widthMm, reliefMm)))
  return ok(easedAt(reliefMm, curve.kind === 'easedCorners' ? curve.flatShare * halfMm : 0, halfMm))
}
