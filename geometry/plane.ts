import { behindAt, type Profile } from './profile.ts'
import { atan, cos, tan } from './trigonometry.ts'
import { degFromRad, radFromDeg } from './units.ts'

/** An angle with the plane skewed by k to its way: tan a' = tan a cos k. A pitch of 45 at 45 degrees of skew works as 35.26. */
export const skewedDeg = (angleDeg: number, skewDeg: number): number =>
  angleDeg === 90 ? 90 : degFromRad(atan(tan(radFromDeg(angleDeg)) * cos(radFromDeg(skewDeg))))

/** An edge planed with the iron's middle to the side of it. */
export interface Joint {
  /** Off square, + leaves the board's left side high. */
  readonly angleDeg: number
  /** How far the middle of it lies below its sides. */
  readonly hollowMm: number
}

/**
 * What a pass makes of a board's edge with the iron's middle `shiftMm` to the right of the board's. For an arc of radius r the
 * angle is shift / r x the sine of the seat, the hollow (board / 2)^2 / (2 r) x the sine.
 * @returns null where the iron does not cover the board
 */
export const jointOf = (profile: Profile, boardMm: number, shiftMm: number, seatSine: number): Joint | null => {
  const left = behindAt(profile, -shiftMm - boardMm / 2)
  const right = behindAt(profile, -shiftMm + boardMm / 2)
  if (!Number.isFinite(left) || !Number.isFinite(right)) return null
  const middle = behindAt(profile, -shiftMm)
  return {
    angleDeg: degFromRad(atan(((left - right) * seatSine) / boardMm)),
    hollowMm: ((left + right) / 2 - middle) * seatSine,
  }
}

/** Whether a straight cap iron leaves edge at the corners: the setback there is less by the relief. */
export const capAdvice = (setbackMm: number, reliefMm: number): 'capClear' | 'capBeyondCorners' =>
  setbackMm > reliefMm ? 'capClear' : 'capBeyondCorners'

/** How an iron lies and is honed. Angles in degrees; back bevel 0: none. */
export interface Bevels {
  readonly seatAngleDeg: number
  readonly bevelSide: 'up' | 'down'
  readonly honedDeg: number
  readonly backBevelDeg: number
}

/** Below this a clearance lets the wood rub behind the edge as it wears (degrees; common practice). */
export const LEAST_CLEARANCE_DEG = 10

/** Pitch and clearance: bevel down the back bevel adds to the pitch, bevel up it takes from the clearance. */
export const anglesInUse = ({ seatAngleDeg, bevelSide, honedDeg, backBevelDeg }: Bevels) =>
  bevelSide === 'down'
    ? { pitchDeg: seatAngleDeg + backBevelDeg, clearanceDeg: seatAngleDeg - honedDeg }
    : { pitchDeg: seatAngleDeg + honedDeg, clearanceDeg: seatAngleDeg - backBevelDeg }
