import { PI } from './trigonometry.ts'

/**
 * Conversions, all of them. Inside the program lengths are millimetres and angles radians;
 * degrees, inches and thou exist only at the doors (job file, screens, cards).
 */

/** One inch is exactly 25.4 mm (Addendum to NBS Circular 572, 1959; NIST SP 811, B.8). */
export const MM_PER_INCH = 25.4

/** A thou is a thousandth of an inch. */
export const MM_PER_THOU = MM_PER_INCH / 1000

/** Files for other programs may want metres. */
export const MM_PER_M = 1000

const RAD_PER_DEG = PI / 180

/** @param deg an angle in degrees @returns the same angle in radians */
export const radFromDeg = (deg: number): number => deg * RAD_PER_DEG

/** @param rad an angle in radians @returns the same angle in degrees */
export const degFromRad = (rad: number): number => rad / RAD_PER_DEG

/** Speed of a rim. @param diameterMm rim diameter @param rpm turns a minute @returns metres a second, pi D n / 60 */
export const rimSpeedMPerS = (diameterMm: number, rpm: number): number => (PI * diameterMm * rpm) / 60_000
