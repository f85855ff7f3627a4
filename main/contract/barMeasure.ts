import type { Station } from './entities.ts'

/** What of a station it takes to measure its bar. */
export type Mount = Pick<Station, 'wheelDiameterMm' | 'barDiameterMm' | 'barOffsetMm'>
export type BarMeasure = Station['barMeasure']

/** Bar's axis over the wheel's highest point, or before its foremost one; the bar stands `barOffsetMm` beside the line through the axle. */
const axisOverMm = ({ wheelDiameterMm, barOffsetMm }: Mount, barDistanceMm: number): number =>
  Math.sqrt(barDistanceMm * barDistanceMm - barOffsetMm * barOffsetMm) - wheelDiameterMm / 2

/**
 * What a caliper reads for a bar that stands so far from the axle: between the surfaces of bar and wheel; or from the wheel's
 * highest point to the top or the underside of the bar. Wheel 250, bar 12, axle to bar 207.57: gap 76.57, to the top 88.57,
 * to the underside 76.57.
 */
export const measureOf = (measure: BarMeasure, mount: Mount, barDistanceMm: number): number => {
  const barRadiusMm = mount.barDiameterMm / 2
  if (measure === 'gap') return barDistanceMm - mount.wheelDiameterMm / 2 - barRadiusMm
  return axisOverMm(mount, barDistanceMm) + (measure === 'heightToTop' ? barRadiusMm : -barRadiusMm)
}

/** The other way round: axle to bar from what a caliper reads. */
export const barDistanceOf = (measure: BarMeasure, mount: Mount, readMm: number): number => {
  const { wheelDiameterMm, barDiameterMm, barOffsetMm } = mount
  if (measure === 'gap') return readMm + wheelDiameterMm / 2 + barDiameterMm / 2
  const upMm = readMm + wheelDiameterMm / 2 + (measure === 'heightToTop' ? -barDiameterMm : barDiameterMm) / 2
  return Math.sqrt(upMm * upMm + barOffsetMm * barOffsetMm)
}
