import { radiusOfRelief } from '../../geometry/aim.ts'
import { foremostMm } from '../../geometry/edge.ts'
import { wantedDepthMm } from '../glass/wantedDepth.ts'
import type { RunShape } from '../worker/protocol.ts'
import type { PointRow } from './pointRow.ts'

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

/** @returns where a place across stands in the glass */
export const acrossPx = ({ leftMm, acrossPxPerMm }: CurveScale, uMm: number): number => (uMm - leftMm) * acrossPxPerMm

type EdgeShape = Pick<RunShape, 'uMm' | 'throughCount'>

/** Adds the edge of a field to a row, from one column to another, as deep as it lies behind its foremost point. */
export const addEdge = (
  row: Pick<PointRow, 'add'>,
  vMm: ArrayLike<number>,
  { uMm, throughCount }: EdgeShape,
  scale: CurveScale,
  from: number,
  to: number,
): void => {
  const foremost = foremostMm(vMm, throughCount)
  for (let i = from; i <= to; i++)
    row.add(
      acrossPx(scale, uMm[i] as number),
      scale.topPx + ((vMm[i * throughCount] as number) - foremost) * scale.depthPxPerMm,
    )
}

/** Draws the edge of a field, from one column to another; nothing where `to` lies before `from`. */
export const drawEdge = (
  row: PointRow,
  vMm: ArrayLike<number>,
  shape: EdgeShape,
  scale: CurveScale,
  from: number,
  to: number,
): void => {
  row.start()
  addEdge(row, vMm, shape, scale, from, to)
  row.end()
}

/** The wanted edge: an arc through the middle whose corners lie `reliefMm` behind. @returns v at u */
export const wantedAt = (uMm: number, widthMm: number, reliefMm: number): number =>
  wantedDepthMm(reliefMm > 0 ? radiusOfRelief(widthMm, reliefMm) : null, uMm)
