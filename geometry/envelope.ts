import { acrossMm, edgeReport } from './edge.ts'
import type { Freedom, Stops } from './freedom.ts'
import type { Job } from './job.ts'
import type { EdgeReport } from './report.ts'
import type { SetUp } from './setUp.ts'
import { cos, sin } from './trigonometry.ts'

/**
 * Cuts at constant depth: the blade turns between its stops while its tilt stays put, wheel a true cylinder unlimited in
 * width, set-up without errors. Exact for rigid cuts and the answer of a blade swung about a pin; not a limit of a grind
 * that may tilt. At every level n through the thickness the wheel leaves the upper envelope of the lines (or ellipses) it
 * cuts there, in closed form: no sampling.
 *
 * Independent check: tests/geometry takes the maximum over ten thousand sampled lines; manifold-3d cuts the same poses.
 */
export interface SurfacePoint {
  readonly vMm: number
  /** Slopes of the surface v(u, n). */
  readonly perU: number
  readonly perN: number
}

/**
 * Yaw, at one level: the lines v = L - (L - x sin th) / cos th, x across from the pivot, L from pivot to the wheel's line.
 * A line touches the envelope where sin th = x / L, so between the stops it is the arc L - sqrt(L^2 - x^2), beyond them the
 * tangent at the stop. Over all levels the arcs are a piece of a torus.
 */
export const envelopeAt = (pivotToLineMm: number, xMm: number, slope: number): number => {
  const away = Math.abs(xMm)
  const secant = Math.sqrt(1 + slope * slope)
  const sine = slope / secant
  if (away <= pivotToLineMm * sine) return pivotToLineMm - Math.sqrt(pivotToLineMm * pivotToLineMm - away * away)
  return pivotToLineMm - (pivotToLineMm - away * sine) * secant
}

/** The wheel's circle in the blade frame, square position. */
interface Circle {
  readonly radiusMm: number
  readonly centreVMm: number
  readonly centreNMm: number
}

/** v of the circle at a level and its growth with it. */
const circleAt = ({ radiusMm, centreVMm, centreNMm }: Circle, nMm: number): readonly [vMm: number, perN: number] => {
  const below = nMm - centreNMm
  const reach = Math.sqrt(radiusMm * radiusMm - below * below)
  return [centreVMm + reach, -below / reach]
}

const yawSurface = (circle: Circle, pivotVMm: number, stops: Stops, xMm: number, nMm: number): SurfacePoint => {
  const [lineMm, linePerN] = circleAt(circle, nMm)
  const L = pivotVMm - lineMm
  const slope = xMm < 0 ? stops.slopeLeft : stops.slopeRight
  const secant = Math.sqrt(1 + slope * slope)
  const vMm = lineMm + envelopeAt(L, xMm, slope)
  if (Math.abs(xMm) * secant > L * slope) return { vMm, perU: xMm < 0 ? -slope : slope, perN: linePerN * secant }
  const chord = Math.sqrt(L * L - xMm * xMm)
  return { vMm, perU: xMm / chord, perN: (linePerN * L) / chord }
}

/** Level to which a roll lifts a point, and its growths. */
interface Lift {
  readonly nMm: number
  readonly perX: number
  readonly perN: number
}

/**
 * Roll: a point x across and a above the axis comes to the level axis + x sin ph + a cos ph, and the wheel cuts furthest
 * where that level is highest (its axis lies above every blade): inside the stops at hypot(x, a), else at a stop.
 */
const highestLift = (stops: Stops, xMm: number, aboveMm: number): Lift => {
  const slope = xMm < 0 ? stops.slopeLeft : stops.slopeRight
  const away = Math.abs(xMm)
  const side = xMm < 0 ? -1 : 1
  if (aboveMm > 0 && away <= aboveMm * slope) {
    const nMm = Math.sqrt(away * away + aboveMm * aboveMm)
    return { nMm, perX: xMm / nMm, perN: aboveMm / nMm }
  }
  const secant = Math.sqrt(1 + slope * slope)
  const atStop = { nMm: (away * slope + aboveMm) / secant, perX: (side * slope) / secant, perN: 1 / secant }
  return aboveMm >= 0 ? atStop : higherOf(atStop, otherStop(stops, xMm, aboveMm))
}

const higherOf = (a: Lift, b: Lift): Lift => (a.nMm >= b.nMm ? a : b)

/** Below the axis, a roll away from a point may lift it more than one towards it. */
const otherStop = (stops: Stops, xMm: number, aboveMm: number): Lift => {
  const slope = xMm < 0 ? -stops.slopeRight : -stops.slopeLeft
  const side = xMm < 0 ? -1 : 1
  const secant = Math.sqrt(1 + slope * slope)
  return { nMm: (Math.abs(xMm) * slope + aboveMm) / secant, perX: (side * slope) / secant, perN: 1 / secant }
}

const rollSurface = (circle: Circle, axisNMm: number, stops: Stops, xMm: number, nMm: number): SurfacePoint => {
  const lift = highestLift(stops, xMm, nMm - axisNMm)
  const [vMm, perLevel] = circleAt(circle, axisNMm + lift.nMm)
  return { vMm, perU: perLevel * lift.perX, perN: perLevel * lift.perN }
}

/** The bevel that cuts at constant depth leave, as a surface v(u, n), for the first setting of the stops; null without stops. */
export const envelopeSurface = (
  job: Job,
  setUp: SetUp,
  freedom: Freedom,
): ((uMm: number, nMm: number) => SurfacePoint) | null => {
  if (freedom.unstopped) return null
  const { wheelRadiusMm, bevelRad } = setUp
  const circle = {
    radiusMm: wheelRadiusMm,
    centreVMm: -wheelRadiusMm * sin(bevelRad),
    centreNMm: wheelRadiusMm * cos(bevelRad),
  }
  const stops = freedom.settings[0]
  const { pivotOffsetMm, rollHeightMm } = job.fixture
  return freedom.turns === 'roll'
    ? (uMm, nMm) => rollSurface(circle, rollHeightMm, stops, uMm - pivotOffsetMm, nMm)
    : (uMm, nMm) => yawSurface(circle, freedom.pivotToEdgeMm, stops, uMm - pivotOffsetMm, nMm)
}

/** The edge of that bevel on the nodes of a job's grid. */
export const envelopeOf = (job: Job, setUp: SetUp, freedom: Freedom): EdgeReport | null => {
  const surface = envelopeSurface(job, setUp, freedom)
  if (surface === null) return null
  const uMm = acrossMm(job.blade.widthMm, job.grid.across)
  return edgeReport(
    uMm,
    uMm.map((u) => surface(u, 0).vMm),
  )
}
