import type { Job } from '../../geometry/job.ts'
import type { SetUp } from '../../geometry/setUp.ts'

/**
 * The one transform from the engine's frames to the scene. One unit of the scene is one millimetre.
 *
 * Scene: origin on the wheel's axis at mid-width, X along the axis to the operator's right, Y up, Z towards the operator.
 * The bar stands over the axle, barOffsetMm towards the operator. Blade and fixture frames are the blade frame with its
 * third axis turned round, x = u, y = v, z = -n, so that they are right-handed and the back faces +z.
 *
 * Base: stays parallel to the wheel; tilts about the bar and slides along it. Blade: the base yawed about the pivot
 * (u_p, P + setback). With tilt a, C between the axes, e_r from wheel to bar and e_t across it towards the operator:
 *
 *     v = cos a e_r - sin a e_t        -n = sin a e_r + cos a e_t
 *
 * which puts the wheel's axis at v = P - C cos a, n = o + C sin a, as the engine has it.
 */
export interface MachineFigures {
  readonly projectionMm: number
  readonly seatOffsetMm: number
  readonly barDistanceMm: number
  readonly barOffsetMm: number
  readonly pivotUMm: number
  readonly pivotVMm: number
}

/** Where the machine stands. */
export interface StanceMm {
  readonly tiltRad: number
  readonly yawRad: number
  readonly traverseMm: number
}

/** The lengths that place blade and fixture. */
export const machineFigures = (job: Job, setUp: SetUp): MachineFigures => ({
  projectionMm: setUp.projectionMm,
  seatOffsetMm: setUp.seatOffsetMm,
  barDistanceMm: setUp.barDistanceMm,
  barOffsetMm: job.station.barOffsetMm,
  pivotUMm: job.fixture.pivotOffsetMm,
  pivotVMm: setUp.projectionMm + job.fixture.pivotSetbackMm,
})

/** Tilt at which the unworn edge meets the wheel at the bevel: the stance of a grind before its first step. */
export const setUpTiltRad = ({ projectionMm, seatOffsetMm, wheelRadiusMm, bevelRad }: SetUp): number =>
  Math.atan2(wheelRadiusMm * Math.cos(bevelRad) - seatOffsetMm, projectionMm + wheelRadiusMm * Math.sin(bevelRad))

/** Along the lines that bar handles follow, a second point this far from the first (mm). */
export const AXIS_MM = 30

/** Bar's axis in the scene, (Y, Z). */
export const barAxisMm = ({ barDistanceMm: C, barOffsetMm }: MachineFigures): readonly [number, number] => [
  Math.sqrt(C * C - barOffsetMm * barOffsetMm),
  barOffsetMm,
]

/** How far the bar stands out beyond the furthest place the fixture goes (mm). */
const BAR_SPARE_MM = 34

/** From the wheel's middle to either end of the bar (mm). */
export const barReachMm = ({ station, blade, motion }: Job): number =>
  Math.max(station.wheelWidthMm / 2, blade.widthMm / 2 + 24) + motion.traverseMm + BAR_SPARE_MM

/** A 4 x 4 matrix, column by column. */
export type Matrix = Float64Array

/** Fills `out` with the base frame's matrix. */
export const placeBase = (figures: MachineFigures, stance: StanceMm, out: Matrix): void => {
  const { projectionMm: P, seatOffsetMm: o, barDistanceMm: C, barOffsetMm: barZ } = figures
  // Called with every picture: nothing is made here, not even a pair.
  const barY = Math.sqrt(C * C - barZ * barZ)
  const ry = barY / C
  const rz = barZ / C
  const sine = Math.sin(stance.tiltRad)
  const cosine = Math.cos(stance.tiltRad)
  // e_t = (0, -rz, ry)
  const vy = cosine * ry + sine * rz
  const vz = cosine * rz - sine * ry
  const backY = sine * ry - cosine * rz
  const backZ = sine * rz + cosine * ry
  out.fill(0)
  out[0] = 1
  out[5] = vy
  out[6] = vz
  out[9] = backY
  out[10] = backZ
  out[12] = stance.traverseMm
  out[13] = barY - P * vy + o * backY
  out[14] = barZ - P * vz + o * backZ
  out[15] = 1
}

/** Fills `out` with the blade frame's matrix, as seen from the base frame: a yaw about the pivot. */
export const placeBladeOnBase = ({ pivotUMm, pivotVMm }: MachineFigures, yawRad: number, out: Matrix): void => {
  const sine = Math.sin(yawRad)
  const cosine = Math.cos(yawRad)
  out.fill(0)
  out[0] = cosine
  out[1] = -sine
  out[4] = sine
  out[5] = cosine
  out[10] = 1
  out[12] = pivotUMm - pivotUMm * cosine - pivotVMm * sine
  out[13] = pivotVMm + pivotUMm * sine - pivotVMm * cosine
  out[15] = 1
}

/** The point (x, y, z) under a matrix. */
export const under = (m: Matrix, x: number, y: number, z: number): readonly [number, number, number] => {
  const row = (k: number): number =>
    (m[k] as number) * x + (m[k + 4] as number) * y + (m[k + 8] as number) * z + (m[k + 12] as number)
  return [row(0), row(1), row(2)]
}
