import { aimCurveOver } from '../../geometry/aimCurve.ts'
import type { Profile } from '../../geometry/profile.ts'
import type { PlanReport } from '../../geometry/report.ts'

/**
 * Points along the wanted arc. Spaced evenly by angle, so that an arc as deep as half its width is as smooth as a shallow one:
 * the chord strays from the arc by its radius times a^2 / 8, a the angle between points. At 12 mm of relief on 120 mm, the
 * deepest that a job can ask for in figures, that is 0.0003 mm.
 */
const POINTS = 401

const placesAlong = (widthMm: number, edgeRadiusMm: number | null): number[] => {
  const halfMm = widthMm / 2
  if (edgeRadiusMm === null) return [-halfMm, halfMm]
  const most = Math.asin(Math.min(halfMm / edgeRadiusMm, 1))
  const inner = Array.from(
    { length: POINTS - 2 },
    (_, i) => edgeRadiusMm * Math.sin(most * ((2 * (i + 1)) / (POINTS - 1) - 1)),
  )
  return [-halfMm, ...inner, halfMm]
}

/** The wanted edge, corner to corner. */
export const wantedProfile = ({ reliefMm, edgeRadiusMm }: PlanReport, widthMm: number): Profile => {
  const curve = aimCurveOver({ kind: 'arc', reliefMm }, widthMm)
  const uMm = placesAlong(widthMm, edgeRadiusMm)
  return { uMm, behindMm: curve.ok ? uMm.map(curve.value) : uMm.map(() => 0) }
}

/** Factors that a depth may be magnified by on paper; one is chosen, never a crooked figure. */
const FACTORS = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000] as const

/** @returns the largest round factor at which a depth still fits the room; 1 where it is nothing or fills the room as it is */
export const depthFactor = (deepestMm: number, roomMm: number): number =>
  deepestMm > 0 ? (FACTORS.findLast((factor) => factor * deepestMm <= roomMm) ?? 1) : 1
