import { edgeReport } from './edge.ts'
import type { Freedom } from './freedom.ts'
import type { Job } from './job.ts'
import type { EdgeReport } from './report.ts'

/**
 * Cuts at constant depth: the blade swings about its pivot between the stops while its tilt stays put, wheel unlimited in
 * width. On the back the wheel leaves the upper envelope of the lines v = L - (L - x sin th) / cos th, x across from the
 * pivot, L from pivot to edge. A line touches the envelope where sin th = x / L, so between the stops it is the arc
 * L - sqrt(L^2 - x^2), beyond them the tangent at the stop. Exact for rigid cuts; not a limit of a grind that may tilt.
 *
 * Independent check: tests/geometry takes the maximum over ten thousand sampled lines; manifold-3d cuts the same poses.
 */
export const envelopeAt = (pivotToEdgeMm: number, xMm: number, yawSlope: number): number => {
  const away = Math.abs(xMm)
  const secant = Math.sqrt(1 + yawSlope * yawSlope)
  const sine = yawSlope / secant
  const lastOnArcMm = pivotToEdgeMm * sine
  if (away <= lastOnArcMm) return pivotToEdgeMm - Math.sqrt(pivotToEdgeMm * pivotToEdgeMm - away * away)
  return pivotToEdgeMm - (pivotToEdgeMm - away * sine) * secant
}

/** Equal steps across the width, both corners included, left (negative) first. */
export const acrossMm = (widthMm: number, count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => (widthMm * (2 * i - (count - 1))) / (2 * (count - 1)))

/** The envelope of a job on the nodes of its grid. */
export const envelopeOf = (job: Job, freedom: Freedom): EdgeReport => {
  const uMm = acrossMm(job.blade.widthMm, job.grid.across)
  const vMm = uMm.map((u) => {
    const x = u - job.fixture.pivotOffsetMm
    return envelopeAt(freedom.pivotToEdgeMm, x, x < 0 ? freedom.yawSlopeLeft : freedom.yawSlopeRight)
  })
  return edgeReport(uMm, vMm)
}
