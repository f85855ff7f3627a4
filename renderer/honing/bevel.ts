import { hollowLastsMm, honingsLeft, secondaryWidthMm } from '../../geometry/honing.ts'
import type { Report } from '../../geometry/report.ts'
import { radFromDeg } from '../../geometry/units.ts'

/** What honing makes of a hollow bevel. */
export interface HonedBevel {
  /** Along the stone, after one honing; null: the stone leaves no hollow. */
  readonly widthMm: number | null
  /** Honings until the hollow is gone; null: the honed angle is no more than the hollow's chord, so it lies on the heel at once. */
  readonly honings: number | null
  readonly lastsMm: number
}

/** @returns width of the secondary bevel and how long the hollow lasts. @param setBackMm of each honing */
export const honedBevel = (report: Report, honedDeg: number, setBackMm: number): HonedBevel => {
  const { setUp, hollow, job } = report
  const honedRad = radFromDeg(honedDeg)
  const bevelRad = radFromDeg(setUp.bevelAngleDeg)
  const wheelRadiusMm = job.station.wheelDiameterMm / 2
  const heelMm = hollow.chordMm * Math.cos(radFromDeg(hollow.chordAngleDeg))
  const lastsMm = hollowLastsMm(heelMm, job.blade.thicknessMm, honedRad)
  return {
    widthMm: secondaryWidthMm({ wheelRadiusMm, bevelRad, honedRad }, setBackMm),
    honings: lastsMm <= 0 || setBackMm <= 0 ? null : honingsLeft(lastsMm, setBackMm),
    lastsMm,
  }
}
