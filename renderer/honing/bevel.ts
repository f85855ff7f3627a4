import { hollowLastsMm, honingsLeft, secondaryWidthMm } from '../../geometry/honing.ts'
import type { Report } from '../../geometry/report.ts'
import { radFromDeg } from '../../geometry/units.ts'

/**
 * What one honing makes of a hollow bevel:
 * - `onHeel`: the honed angle is no more than the hollow's chord, so the stone lies on the heel before it reaches the edge;
 * - `whole`: it takes the whole hollow, and the bevel is one flat from edge to back;
 * - `reachesHeel`: it leaves some hollow between a flat at the edge and one at the heel;
 * - `flat`: a flat at the edge alone, and further honings before the stone meets the heel.
 */
export type HonedBevel =
  | { readonly kind: 'onHeel' }
  | { readonly kind: 'whole' | 'reachesHeel'; readonly widthMm: number }
  | { readonly kind: 'flat'; readonly widthMm: number; readonly honings: number }

/** What of a report the bevel hangs on. */
export type Hollowed = Pick<Report, 'hollow'> & {
  readonly setUp: Pick<Report['setUp'], 'bevelAngleDeg'>
  readonly job: {
    readonly station: Pick<Report['job']['station'], 'wheelDiameterMm'>
    readonly blade: Pick<Report['job']['blade'], 'thicknessMm'>
  }
}

/** From edge to heel along the back. */
export const heelOf = ({ hollow }: Hollowed): number => hollow.chordMm * Math.cos(radFromDeg(hollow.chordAngleDeg))

/** @returns what one honing makes of the bevel, and the width of the flat along the stone. @param setBackMm of each honing, > 0 */
export const honedBevel = (hollowed: Hollowed, honedDeg: number, setBackMm: number): HonedBevel => {
  const { setUp, job } = hollowed
  const { thicknessMm } = job.blade
  const honedRad = radFromDeg(honedDeg)
  const lastsMm = hollowLastsMm(heelOf(hollowed), thicknessMm, honedRad)
  if (lastsMm <= 0) return { kind: 'onHeel' }
  const wholeMm = thicknessMm / Math.sin(honedRad)
  const wheel = { wheelRadiusMm: job.station.wheelDiameterMm / 2, bevelRad: radFromDeg(setUp.bevelAngleDeg), honedRad }
  const widthMm = secondaryWidthMm(wheel, setBackMm)
  if (widthMm === null || widthMm >= wholeMm) return { kind: 'whole', widthMm: wholeMm }
  if (setBackMm >= lastsMm) return { kind: 'reachesHeel', widthMm }
  return { kind: 'flat', widthMm, honings: honingsLeft(lastsMm, setBackMm) }
}
