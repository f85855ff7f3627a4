import { radiusOfRelief } from '../../geometry/aim.ts'
import { wantedDepthMm } from '../glass/wantedDepth.ts'

/** A curve across the blade as a path in the glass: x from the left corner, y down as steel goes. */
export interface CurveScale {
  readonly leftMm: number
  readonly acrossPxPerMm: number
  readonly depthPxPerMm: number
  /** Where the datum lies from the top of the view. */
  readonly topPx: number
}

const DECIMALS = 2

/**
 * @param at gives v at point i
 * @returns path data through all points, v taken from the foremost one
 */
export const curvePath = (uMm: ArrayLike<number>, at: (i: number) => number, scale: CurveScale): string => {
  let foremost = Number.POSITIVE_INFINITY
  for (let i = 0; i < uMm.length; i++) foremost = Math.min(foremost, at(i))
  let path = ''
  for (let i = 0; i < uMm.length; i++) {
    const x = ((uMm[i] as number) - scale.leftMm) * scale.acrossPxPerMm
    const y = scale.topPx + (at(i) - foremost) * scale.depthPxPerMm
    path += `${i === 0 ? 'M' : 'L'}${x.toFixed(DECIMALS)} ${y.toFixed(DECIMALS)}`
  }
  return path
}

/** The wanted edge: an arc through the middle whose corners lie `reliefMm` behind. @returns v at u */
export const wantedAt = (uMm: number, widthMm: number, reliefMm: number): number =>
  wantedDepthMm(reliefMm > 0 ? radiusOfRelief(widthMm, reliefMm) : null, uMm)
