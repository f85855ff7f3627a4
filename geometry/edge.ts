import type { EdgeReport } from './report.ts'
import { atan } from './trigonometry.ts'
import { degFromRad } from './units.ts'

/** How far each corner lies behind the foremost point of an edge, corners included; never negative. */
export interface Relief {
  readonly leftMm: number
  readonly rightMm: number
}

/** The foremost point of an edge. @param stride as `reliefOf` takes it */
export const foremostMm = (vMm: ArrayLike<number>, stride = 1): number => {
  let foremost = Number.POSITIVE_INFINITY
  for (let at = 0; at < vMm.length; at += stride) foremost = Math.min(foremost, vMm[at] as number)
  return foremost
}

/**
 * @param vMm a field row by row from left to right, or an edge alone
 * @param stride entries from one point of the edge to the next: nodes through the thickness, 1 for an edge alone
 */
export const reliefOf = (vMm: Float64Array, stride = 1): Relief => {
  const foremost = foremostMm(vMm, stride)
  return { leftMm: (vMm[0] as number) - foremost, rightMm: (vMm[vMm.length - stride] as number) - foremost }
}

/** An edge line with its relief and the slope of its corners' chord, right corner back is +. */
export const edgeReport = (uMm: Float64Array, edgeVMm: Float64Array): EdgeReport => {
  const { leftMm, rightMm } = reliefOf(edgeVMm)
  const widthMm = (uMm.at(-1) as number) - (uMm[0] as number)
  return {
    edgeUMm: Array.from(uMm),
    edgeVMm: Array.from(edgeVMm),
    reliefLeftMm: leftMm,
    reliefRightMm: rightMm,
    skewDeg: degFromRad(atan((rightMm - leftMm) / widthMm)),
  }
}

/** One figure for both corners: their mean. */
export const meanReliefMm = ({
  reliefLeftMm,
  reliefRightMm,
}: Pick<EdgeReport, 'reliefLeftMm' | 'reliefRightMm'>): number => (reliefLeftMm + reliefRightMm) / 2

/** The edge row of a field. */
export const edgeRow = (vMm: Float64Array, stride: number): Float64Array =>
  Float64Array.from({ length: vMm.length / stride }, (_, i) => vMm[i * stride] as number)

/** The edge of a field, as reported. */
export const edgeOf = (uMm: Float64Array, vMm: Float64Array, throughCount: number): EdgeReport =>
  edgeReport(uMm, edgeRow(vMm, throughCount))

/** Equal steps across the width, both corners included, left (negative) first. */
export const acrossMm = (widthMm: number, count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => (widthMm * (2 * i - (count - 1))) / (2 * (count - 1)))
