import type { Job } from './job.ts'
import { quantities } from './quantities.ts'
import type { SetUpReport } from './report.ts'
import { failed, ok, problem, type Result } from './result.ts'
import { asin, atan2, cos, PI, sin, tan } from './trigonometry.ts'
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
  /** Bar's axis from the blade's back where the bar stands, + on the bevel side. */
  readonly seatOffsetMm: number
  /** Growth of seatOffsetMm with the projection: 0 but for a tapered iron that lies on its bevel side. */
  readonly seatOffsetPerMm: number
  readonly projectionMm: number
  readonly barDistanceMm: number
  readonly bevelRad: number
  /** The second bevel that the same bar and projection would give, where there is one. */
  readonly otherBevelRad: number | null
}

/** Bar's axis from the back, at a projection P: atEdgeMm + perMm x P. */
interface Seat {
  readonly atEdgeMm: number
  readonly perMm: number
}

/**
 * A blade that lies on its back has the bar at the fixture's own offset. One that lies on its bevel side has its thickness
 * at the bar between back and fixture; its upper face leans by the taper.
 */
const seatOf = ({ blade, fixture }: Job): Seat => {
  if (fixture.seatsOn === 'back') return { atEdgeMm: fixture.seatOffsetMm, perMm: 0 }
  const taperRad = radFromDeg(blade.taperDeg)
  return { atEdgeMm: blade.thicknessMm + fixture.seatOffsetMm / cos(taperRad), perMm: -tan(taperRad) }
}

const offsetAt = ({ atEdgeMm, perMm }: Seat, projectionMm: number): number => atEdgeMm + perMm * projectionMm

interface Lengths {
  readonly wheelRadiusMm: number
  readonly seat: Seat
}

/** @returns axis to axis distance (mm) for a bevel and a projection */
export const barDistanceFor = ({ wheelRadiusMm, seat }: Lengths, bevelRad: number, projectionMm: number): number => {
  const along = projectionMm + wheelRadiusMm * sin(bevelRad)
  const across = offsetAt(seat, projectionMm) - wheelRadiusMm * cos(bevelRad)
  return Math.sqrt(along * along + across * across)
}

/**
 * The larger root of (P + R sin b)^2 + (atEdge + perMm P - R cos b)^2 = C^2.
 * @returns projection (mm) for a bevel and a bar distance, or null where the bar is too near; may be negative
 */
export const projectionFor = (
  { wheelRadiusMm, seat }: Lengths,
  bevelRad: number,
  barDistanceMm: number,
): number | null => {
  const along = wheelRadiusMm * sin(bevelRad)
  const across = seat.atEdgeMm - wheelRadiusMm * cos(bevelRad)
  const lead = 1 + seat.perMm * seat.perMm
  const half = along + across * seat.perMm
  const square = half * half - lead * (along * along + across * across - barDistanceMm * barDistanceMm)
  return square < 0 ? null : (Math.sqrt(square) - half) / lead
}

/** How fast the triangle opens with the bevel, P cos b + o sin b; positive on the usual branch. */
const opening = (seatOffsetMm: number, bevelRad: number, projectionMm: number): number =>
  projectionMm * cos(bevelRad) + seatOffsetMm * sin(bevelRad)

/** @returns bevels (rad) between 0 and 90 degrees that a bar distance and a projection give, the usual one first */
export const bevelsFor = (
  { wheelRadiusMm, seat }: Lengths,
  projectionMm: number,
  barDistanceMm: number,
): readonly number[] => {
  const seatOffsetMm = offsetAt(seat, projectionMm)
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

const seatedOnBack = ({ fixture }: Job): boolean => fixture.seatsOn === 'back'

/** A bar that just touches the blade is no obstacle for what rounding makes of it. */
const HAIR_MM = 1e-9

/** Where the bar or the blade would have to pass through something, or the figure found is no bevel. */
const obstacle = (job: Job, setUp: SetUp) => {
  const { wheelRadiusMm, barRadiusMm, seatOffsetMm, projectionMm, barDistanceMm, bevelRad } = setUp
  const { thicknessMm } = job.blade
  const thicknessAtBarMm = thicknessMm - tan(radFromDeg(job.blade.taperDeg)) * projectionMm
  const { min, max } = quantities.aim.bevelAngleDeg
  const bevelDeg = degFromRad(bevelRad)
  const barPath = job.aim.barDistanceMm === null ? 'aim.projectionMm' : 'aim.barDistanceMm'
  const needMm = wheelRadiusMm + barRadiusMm
  if (!(projectionMm > 0)) return problem('noTriangle', 'aim.barDistanceMm')
  if (barDistanceMm < needMm) return problem('barInsideWheel', barPath, { needMm })
  if (bevelDeg < min || bevelDeg > max) return problem('bevelOutOfRange', barPath, { bevelDeg, min, max })
  if (thicknessMm >= wheelRadiusMm * cos(bevelRad)) return problem('thicknessTooGreat', 'blade.thicknessMm')
  if (!(thicknessAtBarMm > 0)) return problem('taperTooGreat', 'blade.taperDeg')
  if (seatOffsetMm < thicknessAtBarMm + barRadiusMm - HAIR_MM && seatOffsetMm > -barRadiusMm)
    return problem('barInsideBlade', 'fixture.seatOffsetMm', {
      needMm: barRadiusMm + (seatedOnBack(job) ? thicknessAtBarMm : 0),
    })
  if (opening(seatOffsetMm, bevelRad, projectionMm) <= 0) return problem('bladeLeansAway', 'fixture.seatOffsetMm')
  if (job.station.barOffsetMm > barDistanceMm)
    return problem('barOffsetTooGreat', 'station.barOffsetMm', { most: barDistanceMm })
  return null
}

/** The triangle of a job: the third of bevel, projection and bar distance from the two that are given. */
export const setUpOf = (job: Job): Result<SetUp> => {
  const wheelRadiusMm = job.station.wheelDiameterMm / 2
  const seat = seatOf(job)
  const corners = findThird(job, { wheelRadiusMm, seat })
  if (!corners.ok) return corners
  const setUp: SetUp = {
    wheelRadiusMm,
    barRadiusMm: job.station.barDiameterMm / 2,
    seatOffsetMm: offsetAt(seat, corners.value.projectionMm),
    seatOffsetPerMm: seat.perMm,
    ...corners.value,
  }
  const inTheWay = obstacle(job, setUp)
  return inTheWay ? failed(inTheWay) : ok(setUp)
}

/** The set-up as a user reads it, with what a millimetre of error does (derivatives of the triangle's equation). */
export const setUpReport = (job: Job, setUp: SetUp): SetUpReport => {
  const { wheelRadiusMm: R, barRadiusMm, seatOffsetMm: o, projectionMm: P, barDistanceMm: C, bevelRad: b } = setUp
  const perRadian = R * opening(o, b, P)
  const perProjection = P + R * sin(b) + (o - R * cos(b)) * setUp.seatOffsetPerMm
  const { barOffsetMm, wheelDiameterMm, wheelSpeedRpm } = job.station
  return {
    barDistanceMm: C,
    projectionMm: P,
    bevelAngleDeg: degFromRad(b),
    gapMm: C - R - barRadiusMm,
    barHeightMm: Math.sqrt(C * C - barOffsetMm * barOffsetMm) - R,
    bevelPerProjectionDegPerMm: -degFromRad(perProjection / perRadian),
    bevelPerBarDistanceDegPerMm: degFromRad(C / perRadian),
    bevelPerWheelDiameterDegPerMm: -degFromRad((P * sin(b) - o * cos(b) + R) / perRadian) / 2,
    rimSpeedMPerS: rimSpeedMPerS(wheelDiameterMm, wheelSpeedRpm),
  }
}

/**
 * The bevel at an edge that the grind has set back by some mm: the projection has shrunk by as much, the bar stands still
 * (so it creeps up by -db/dP for each mm). Where that triangle no longer closes, the bevel set.
 */
export const bevelAtEdge = (setUp: SetUp, recededMm: number): number => {
  const { wheelRadiusMm, seatOffsetMm, projectionMm, barDistanceMm, bevelRad } = setUp
  if (recededMm === 0) return bevelRad
  const seat = { atEdgeMm: seatOffsetMm, perMm: 0 }
  return bevelsFor({ wheelRadiusMm, seat }, projectionMm - recededMm, barDistanceMm)[0] ?? bevelRad
}
