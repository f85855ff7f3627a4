import type { Job } from './job.ts'
import type { HollowReport } from './report.ts'
import type { SetUp } from './setUp.ts'
import { atan2, cos, sin } from './trigonometry.ts'
import { degFromRad } from './units.ts'

/**
 * The concave bevel that a wheel of radius R leaves on a blade of thickness t, wheel square to the edge. In the blade frame the
 * wheel's circle has its centre at v = -R sin b, n = R cos b; it meets the upper face n = t at the heel.
 * Chord, height and radius of a circular segment: h = R - sqrt(R^2 - c^2 / 4) (Machinery's Handbook, "Formulas for Segments of a Circle").
 *
 * @param thicknessMm below R cos b
 */
export const hollowOf = (wheelRadiusMm: number, bevelRad: number, thicknessMm: number): HollowReport => {
  const below = thicknessMm - wheelRadiusMm * cos(bevelRad)
  const heelMm = Math.sqrt(wheelRadiusMm * wheelRadiusMm - below * below) - wheelRadiusMm * sin(bevelRad)
  const chordMm = Math.sqrt(heelMm * heelMm + thicknessMm * thicknessMm)
  return {
    chordMm,
    chordAngleDeg: degFromRad(atan2(thicknessMm, heelMm)),
    depthMm: wheelRadiusMm - Math.sqrt(wheelRadiusMm * wheelRadiusMm - (chordMm * chordMm) / 4),
  }
}

/**
 * The bevel on the blade, taken as flat. Where none is measured it is the chord of the hollow that this set-up leaves: what a
 * protractor finds on an iron ground on it before, so that edge and heel meet the wheel alike.
 */
export const presentBevelDeg = ({ blade }: Job, { wheelRadiusMm, bevelRad }: SetUp): number =>
  blade.currentBevelDeg ?? hollowOf(wheelRadiusMm, bevelRad, blade.thicknessMm).chordAngleDeg
