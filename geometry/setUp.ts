import type { Job } from './job.ts'
import { quantities } from './quantities.ts'
import type { SetUpReport } from './report.ts'
import { failed, ok, problem, type Result } from './result.ts'
import { asin, atan2, cos, PI, sin } from './trigonometry.ts'
import { degFromRad, radFromDeg, rimSpeedMPerS } from './units.ts'

/**
 * The set-up triangle of wheel axis, bar axis and edge, seen along the axes. In the blade frame (v up the blade from the
 * edge, n from the back towards the bevel) the bar's axis is at v = projection, n = seat offset, and a wheel that touches the
 * edge at bevel b has its axis at v = -R sin b, n = R cos b. So, with C between the axes (law of the plane, no source needed):
 *
 *     C^2 = (P + R sin b)^2 + (o - R cos b)^2
 *
 * Independent check: tests/geometry measures the same distances on points placed by rotation.
 */
export interface SetUp {
  readonly wheelRadiusMm: number
  readonly barRadiusMm: number
  /** Bar's axis from the blade's back, + on the bevel side. */
  readonly seatOffsetMm: number
  readonly projectionMm: number
  readonly barDistanceMm: number
  readonly bevelRad: number
  /** The second bevel that the same bar and projection would give, where there is one. */
  readonly otherBevelRad: number | null
}

interface Lengths {
  readonly wheelRadiusMm: number
  readonly seatOffsetMm: number
}

/** @returns axis to axis distance (mm) for a bevel and a projection */
export const barDistanceFor = (
  { wheelRadiusMm, seatOffsetMm }: Lengths,
  bevelRad: number,
  projectionMm: number,
): number => {
  const along = projectionMm + wheelRadiusMm * sin(bevelRad)
  const across = seatOffsetMm - wheelRadiusMm * cos(bevelRad)
  return Math.sqrt(along * along + across * across)
}

/** @returns projection (mm) for a bevel and a bar distance, or null where the bar is too near; may be negative */
export const projectionFor = (
  { wheelRadiusMm, seatOffsetMm }: Lengths,
  bevelRad: number,
  barDistanceMm: number,
): number | null => {
  const across = seatOffsetMm - wheelRadiusMm * cos(bevelRad)
  const square = barDistanceMm * barDistanceMm - across * across
  return square < 0 ? null : Math.sqrt(square) - wheelRadiusMm * sin(bevelRad)
}

/** How fast the triangle opens with the bevel, P cos b + o sin b; positive on the usual branch. */
const opening = (seatOffsetMm: number, bevelRad: number, projectionMm: number): number =>
  projectionMm * cos(bevelRad) + seatOffsetMm * sin(bevelRad)

/** @returns bevels (rad) between 0 and 90 degrees that a bar distance and a projection give, the usual one first */
export const bevelsFor = (
  { wheelRadiusMm, seatOffsetMm }: Lengths,
  projectionMm: number,
  barDistanceMm: number,
): readonly number[] => {
  const reach = Math.sqrt(projectionMm * projectionMm + seatOffsetMm * seatOffsetMm)
  const sine =
    (barDistanceMm * barDistanceMm - wheelRadiusMm * wheelRadiusMm - reach * reach) / (2 * wheelRadiusMm * reach)
  if (Math.abs(sine) > 1) return []
  const turn = atan2(seatOffsetMm, projectionMm)
  const principal = asin(sine)
  return [turn + principal, turn + PI - principal]
    .filter((bevelRad) => bevelRad > 0 && bevelRad < PI / 2)
    .sort((a, b) => opening(seatOffsetMm, b, projectionMm) - opening(seatOffsetMm, a, projectionMm))
}

interface Corners {
  readonly bevelRad: number
  readonly projectionMm: number
  readonly barDistanceMm: number
  readonly otherBevelRad: number | null
}

const findThird = (job: Job, lengths: Lengths): Result<Corners> => {
  const { bevelAngleDeg, projectionMm, barDistanceMm } = job.aim
  const noTriangle = failed(problem('noTriangle', 'aim.barDistanceMm'))
  if (bevelAngleDeg !== null && projectionMm !== null) {
    const bevelRad = radFromDeg(bevelAngleDeg)
    const found = barDistanceFor(lengths, bevelRad, projectionMm)
    return ok({ bevelRad, projectionMm, barDistanceMm: found, otherBevelRad: null })
  }
  if (bevelAngleDeg !== null && barDistanceMm !== null) {
    const bevelRad = radFromDeg(bevelAngleDeg)
    const found = projectionFor(lengths, bevelRad, barDistanceMm)
    return found === null ? noTriangle : ok({ bevelRad, projectionMm: found, barDistanceMm, otherBevelRad: null })
  }
  if (projectionMm === null || barDistanceMm === null) return failed(problem('aimNeedsTwo', 'aim', { given: 1 }))
  const [usual, other] = bevelsFor(lengths, projectionMm, barDistanceMm)
  if (usual === undefined) return noTriangle
  return ok({ bevelRad: usual, projectionMm, barDistanceMm, otherBevelRad: other ?? null })
}

/** Where the bar or the blade would have to pass through something, or the figure found is no bevel. */
const obstacle = (job: Job, setUp: SetUp) => {
  const { wheelRadiusMm, barRadiusMm, seatOffsetMm, projectionMm, barDistanceMm, bevelRad } = setUp
  const { thicknessMm } = job.blade
  const { min, max } = quantities.aim.bevelAngleDeg
  const bevelDeg = degFromRad(bevelRad)
  const barPath = job.aim.barDistanceMm === null ? 'aim.projectionMm' : 'aim.barDistanceMm'
  const needMm = wheelRadiusMm + barRadiusMm
  if (!(projectionMm > 0)) return problem('noTriangle', 'aim.barDistanceMm')
  if (barDistanceMm < needMm) return problem('barInsideWheel', barPath, { needMm })
  if (bevelDeg < min || bevelDeg > max) return problem('bevelOutOfRange', barPath, { bevelDeg, min, max })
  if (thicknessMm >= wheelRadiusMm * cos(bevelRad)) return problem('thicknessTooGreat', 'blade.thicknessMm')
  if (seatOffsetMm < thicknessMm + barRadiusMm && seatOffsetMm > -barRadiusMm)
    return problem('barInsideBlade', 'fixture.seatOffsetMm', { needMm: thicknessMm + barRadiusMm })
  if (opening(seatOffsetMm, bevelRad, projectionMm) <= 0) return problem('bladeLeansAway', 'fixture.seatOffsetMm')
  if (job.station.barOffsetMm > barDistanceMm)
    return problem('barOffsetTooGreat', 'station.barOffsetMm', { most: barDistanceMm })
  return null
}

/** The triangle of a job: the third of bevel, projection and bar distance from the two that are given. */
export const setUpOf = (job: Job): Result<SetUp> => {
  const lengths = { wheelRadiusMm: job.station.wheelDiameterMm / 2, seatOffsetMm: job.fixture.seatOffsetMm }
  const corners = findThird(job, lengths)
  if (!corners.ok) return corners
  const setUp: SetUp = { ...lengths, barRadiusMm: job.station.barDiameterMm / 2, ...corners.value }
  const inTheWay = obstacle(job, setUp)
  return inTheWay ? failed(inTheWay) : ok(setUp)
}

/** The set-up as a user reads it, with what a millimetre of error does (derivatives of the triangle's equation). */
export const setUpReport = (job: Job, setUp: SetUp): SetUpReport => {
  const { wheelRadiusMm: R, barRadiusMm, seatOffsetMm: o, projectionMm: P, barDistanceMm: C, bevelRad: b } = setUp
  const perRadian = R * opening(o, b, P)
  const { barOffsetMm, wheelDiameterMm, wheelSpeedRpm } = job.station
  return {
    barDistanceMm: C,
    projectionMm: P,
    bevelAngleDeg: degFromRad(b),
    gapMm: C - R - barRadiusMm,
    barHeightMm: Math.sqrt(C * C - barOffsetMm * barOffsetMm) - R,
    bevelPerProjectionDegPerMm: -degFromRad((P + R * sin(b)) / perRadian),
    bevelPerBarDistanceDegPerMm: degFromRad(C / perRadian),
    bevelPerWheelDiameterDegPerMm: -degFromRad((P * sin(b) - o * cos(b) + R) / perRadian) / 2,
    rimSpeedMPerS: rimSpeedMPerS(wheelDiameterMm, wheelSpeedRpm),
  }
}
