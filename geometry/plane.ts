import { atan, cos, tan } from './trigonometry.ts'
import { degFromRad, radFromDeg } from './units.ts'

/** An edge line by points across, left first: how far each lies behind the foremost one. */
export interface Profile {
  readonly uMm: readonly number[]
  readonly behindMm: readonly number[]
}

/** A point of the shaving: how thick it is there; 0 where nothing is cut. */
export interface ShavingPoint {
  readonly uMm: number
  readonly thicknessMm: number
}

const at = (list: readonly number[], i: number): number => list[i] as number

/** Height at u, straight between points; infinite beyond the corners, where there is no edge. */
const behindAt = ({ uMm, behindMm }: Profile, u: number): number => {
  const next = uMm.findIndex((place) => place >= u)
  if (next < 0 || (next === 0 && u < at(uMm, 0))) return Number.POSITIVE_INFINITY
  if (next === 0) return at(behindMm, 0)
  const share = (u - at(uMm, next - 1)) / (at(uMm, next) - at(uMm, next - 1))
  return at(behindMm, next - 1) * (1 - share) + at(behindMm, next) * share
}

/** The shaving's cross-section: depth less what the edge lies behind, seen by the wood through the sine of the seat. */
export const shavingSection = (
  { uMm, behindMm }: Profile,
  depthMm: number,
  seatSine: number,
): readonly ShavingPoint[] =>
  uMm.map((u, i) => ({ uMm: u, thicknessMm: Math.max(0, depthMm - at(behindMm, i) * seatSine) }))

/** Points looked at from one pass to the next. */
const RIDGE_POINTS = 200

/**
 * Height of the ridges that passes a step apart leave: the lowest of all passes at each place, its highest place. For an
 * edge alike left and right that is its height half a step out.
 * @returns null where the step is wider than the edge and a strip stays uncut
 */
export const ridgeMm = (profile: Profile, stepMm: number, seatSine: number): number | null => {
  const left = at(profile.uMm, 0)
  const widthMm = (profile.uMm.at(-1) as number) - left
  if (!(stepMm > 0) || stepMm > widthMm) return null
  let highest = 0
  for (let k = 0; k < RIDGE_POINTS; k++) {
    let lowest = Number.POSITIVE_INFINITY
    for (let u = left + (k * stepMm) / RIDGE_POINTS; u <= left + widthMm; u += stepMm)
      lowest = Math.min(lowest, behindAt(profile, u))
    highest = Math.max(highest, lowest)
  }
  return highest * seatSine
}

/**
 * The edge turned by the lateral lever, + sets the right corner back, measured again from its foremost point. Small angles:
 * v + u tan a. An arc's crown moves by r tan a: 57 mm with 0.05 mm of relief has r 8,122.5 mm, so 0.1 degree moves it 14.2 mm.
 */
export const turnedProfile = ({ uMm, behindMm }: Profile, turnDeg: number): Profile => {
  const slope = tan(radFromDeg(turnDeg))
  const turned = behindMm.map((v, i) => v + at(uMm, i) * slope)
  const foremost = turned.reduce((a, b) => Math.min(a, b))
  return { uMm, behindMm: turned.map((v) => v - foremost) }
}

/** Where the foremost point is (mm from the middle); of several, the middle one. */
export const crownMm = ({ uMm, behindMm }: Profile): number => {
  const foremost = behindMm.reduce((a, b) => Math.min(a, b))
  const crowns = uMm.filter((_, i) => behindMm[i] === foremost)
  return at(crowns, crowns.length >> 1)
}

/** An angle with the plane skewed by k to its way: tan a' = tan a cos k. A pitch of 45 at 45 degrees of skew works as 35.26. */
export const skewedDeg = (angleDeg: number, skewDeg: number): number =>
  angleDeg === 90 ? 90 : degFromRad(atan(tan(radFromDeg(angleDeg)) * cos(radFromDeg(skewDeg))))

/** Width of the way a skewed iron covers. */
export const swathMm = (widthMm: number, skewDeg: number): number => widthMm * cos(radFromDeg(skewDeg))

/**
 * Angle that a pass takes off a board's edge with the iron's middle `shiftMm` to the right of the board's: + leaves the
 * board's left side high. For an arc of radius r it is shift / r x the sine of the seat.
 * @returns null where the iron does not cover the board
 */
export const jointingDeg = (profile: Profile, boardMm: number, shiftMm: number, seatSine: number): number | null => {
  const left = behindAt(profile, -shiftMm - boardMm / 2)
  const right = behindAt(profile, -shiftMm + boardMm / 2)
  if (!Number.isFinite(left) || !Number.isFinite(right)) return null
  return degFromRad(atan(((left - right) * seatSine) / boardMm))
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

/** Pitch and clearance: bevel down the back bevel adds to the pitch, bevel up it takes from the clearance. */
export const anglesInUse = ({ seatAngleDeg, bevelSide, honedDeg, backBevelDeg }: Bevels) =>
  bevelSide === 'down'
    ? { pitchDeg: seatAngleDeg + backBevelDeg, clearanceDeg: seatAngleDeg - honedDeg }
    : { pitchDeg: seatAngleDeg + honedDeg, clearanceDeg: seatAngleDeg - backBevelDeg }
