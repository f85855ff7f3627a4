import type { Job } from './job.ts'
import type { PlanReport } from './report.ts'
import { failed, ok, problem, type Result } from './result.ts'
import { sin } from './trigonometry.ts'
import { radFromDeg } from './units.ts'

/**
 * The wanted curve as an arc of a circle across the width w: relief s and radius r belong together by
 * r = ((w/2)^2 + s^2) / (2 s) (Machinery's Handbook, "Formulas for Segments of a Circle", c = w, h = s).
 */
export const radiusOfRelief = (widthMm: number, reliefMm: number): number =>
  ((widthMm * widthMm) / 4 + reliefMm * reliefMm) / (2 * reliefMm)

/** The relief of an arc; radius at least half the width. */
export const reliefOfRadius = (widthMm: number, radiusMm: number): number =>
  radiusMm - Math.sqrt(radiusMm * radiusMm - (widthMm * widthMm) / 4)

/** Sine of the seat angle, by which the wood sees relief and shaving; null without a seat. */
export const seatSine = (job: Job): number | null =>
  job.blade.seatAngleDeg === null ? null : sin(radFromDeg(job.blade.seatAngleDeg))

const wantedRelief = (job: Job): Result<number> => {
  const { reliefMm, woodReliefMm, edgeRadiusMm } = job.aim
  const { widthMm } = job.blade
  if (reliefMm !== null) return ok(reliefMm)
  if (woodReliefMm !== null) {
    const sine = seatSine(job)
    return sine === null ? failed(problem('seatNeeded', 'blade.seatAngleDeg')) : ok(woodReliefMm / sine)
  }
  if (edgeRadiusMm === null) return failed(problem('reliefNeedsOne', 'aim', { given: 0 }))
  if (edgeRadiusMm < widthMm / 2)
    return failed(problem('radiusTooSmall', 'aim.edgeRadiusMm', { halfWidthMm: widthMm / 2 }))
  return ok(reliefOfRadius(widthMm, edgeRadiusMm))
}

/** A relief below this is none (mm): a picometre, thousands of times less than an atom; its radius would be no figure any more. */
const LEAST_RELIEF_MM = 1e-9

/** What is wanted of the edge, in every way a user may say it. */
export const planOf = (job: Job): Result<PlanReport> => {
  const relief = wantedRelief(job)
  if (!relief.ok) return relief
  const { widthMm } = job.blade
  const reliefMm = relief.value < LEAST_RELIEF_MM ? 0 : relief.value
  if (reliefMm > widthMm / 2) return failed(problem('reliefTooGreat', 'aim', { most: widthMm / 2 }))
  const edgeRadiusMm = reliefMm === 0 ? null : radiusOfRelief(widthMm, reliefMm)
  const sine = seatSine(job)
  if (sine === null) return ok({ reliefMm, woodReliefMm: null, edgeRadiusMm, shavingWidthMm: null })
  const rise = job.aim.shavingDepthMm / sine
  const shavingWidthMm =
    edgeRadiusMm === null || rise >= reliefMm ? widthMm : 2 * Math.sqrt(rise * (2 * edgeRadiusMm - rise))
  return ok({ reliefMm, woodReliefMm: reliefMm * sine, edgeRadiusMm, shavingWidthMm })
}
