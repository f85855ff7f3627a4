import type { SetUp } from './setUp.ts'

/** How far from the bar the wheel begins. All lengths in mm. */
export interface Reach {
  /** Where the bar's axis stands in the blade's own plane: v along it, n across it. */
  readonly barVMm: number
  readonly barNMm: number
  /** From the bar's axis to the wheel's surface. */
  readonly wheelFromBarMm: number
}

/** @returns the reach of a set-up; it stays the same however the fixture tilts, because it tilts about the bar */
export const reachOf = ({ projectionMm, seatOffsetMm, barDistanceMm, wheelRadiusMm }: SetUp): Reach => ({
  barVMm: projectionMm,
  barNMm: seatOffsetMm,
  wheelFromBarMm: barDistanceMm - wheelRadiusMm,
})

/** A blade that reaches past the wheel's surface by less than this (mm) cannot be pressed on it: a narrow one gives way as much under its load. */
const BARELY_MM = 1

interface GroundBlade {
  readonly throughCount: number
  readonly vMm: Float64Array
  readonly nMm: Float64Array
  readonly reach: Reach
}

/**
 * Whether so much of the blade is ground away that no tilt brings it to the wheel any more: the point of it that is
 * furthest from the bar stands no further out than the wheel's surface.
 */
export const isGroundAway = ({ throughCount, vMm, nMm, reach }: GroundBlade): boolean => {
  const { barVMm, barNMm, wheelFromBarMm } = reach
  const leastMm = wheelFromBarMm + BARELY_MM
  for (let at = 0; at < vMm.length; at++) {
    const alongMm = barVMm - (vMm[at] as number)
    const acrossMm = (nMm[at % throughCount] as number) - barNMm
    if (alongMm > 0 && alongMm * alongMm + acrossMm * acrossMm > leastMm * leastMm) return false
  }
  return true
}
