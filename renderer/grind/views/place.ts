import { INK_THICKNESS_MM } from '../../../geometry/ink.ts'
import type { Frame, RunShape } from '../../worker/protocol.ts'

/** What there is at a place across the blade. */
export interface PlaceFigures {
  /** From the middle, + right. */
  readonly uMm: number
  /** How far the edge lies behind its foremost point. */
  readonly reliefMm: number
  readonly pressureNPerMm: number
  /** Share of the bevel's height there that still carries ink, 0 to 1. */
  readonly inkLeftShare: number
}

/** A place between two columns: `share` of the way from column `left` to the next. */
interface Between {
  readonly left: number
  readonly share: number
}

/** @param uMm columns at equal steps, left first @param atMm kept within them */
const betweenColumns = (uMm: ArrayLike<number>, atMm: number): Between => {
  const last = uMm.length - 1
  const [first, end] = [uMm[0] as number, uMm[last] as number]
  const along = Math.min(Math.max(((atMm - first) / (end - first)) * last, 0), last)
  const left = Math.min(Math.floor(along), last - 1)
  return { left, share: along - left }
}

/** @returns the column nearest to a place */
export const nearestColumn = (uMm: ArrayLike<number>, atMm: number): number => {
  const { left, share } = betweenColumns(uMm, atMm)
  return share < 0.5 ? left : left + 1
}

type Shape = Pick<RunShape, 'uMm' | 'throughCount' | 'acrossCount' | 'vStartMm'>

/** Ink left on one column; its end nodes count half, as everywhere in the field. */
const inkLeftOn = (vMm: Float64Array, { vStartMm, throughCount }: Shape, i: number): number => {
  let inked = 0
  for (let j = 0; j < throughCount; j++) {
    const at = i * throughCount + j
    if ((vMm[at] as number) - (vStartMm[at] as number) > INK_THICKNESS_MM) continue
    inked += j === 0 || j === throughCount - 1 ? 0.5 : 1
  }
  return inked / (throughCount - 1)
}

/** @returns the figures at a place, straight between the columns beside it */
export const placeFigures = (
  frame: Pick<Frame, 'vMm' | 'pressureNPerMm'>,
  shape: Shape,
  atMm: number,
): PlaceFigures => {
  const { uMm, throughCount, acrossCount } = shape
  const { left, share } = betweenColumns(uMm, atMm)
  const between = (at: (i: number) => number): number => at(left) * (1 - share) + at(left + 1) * share
  const edge = (i: number): number => frame.vMm[i * throughCount] as number
  let foremost = Number.POSITIVE_INFINITY
  for (let i = 0; i < acrossCount; i++) foremost = Math.min(foremost, edge(i))
  return {
    uMm: between((i) => uMm[i] as number),
    reliefMm: between(edge) - foremost,
    pressureNPerMm: between((i) => frame.pressureNPerMm[i] as number),
    inkLeftShare: inkLeftOn(frame.vMm, shape, nearestColumn(uMm, atMm)),
  }
}

/** Places are marked in steps of this, as fine as a finger or an arrow key means it (mm). */
export const PLACE_STEP_MM = 0.5

/** @returns the place marked for a place pointed at; none off the blade */
export const markedPlace = (uMm: number, widthMm: number): number | null =>
  Math.abs(uMm) > widthMm / 2 ? null : Math.round(uMm / PLACE_STEP_MM) * PLACE_STEP_MM
