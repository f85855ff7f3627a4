import { edgeRow } from '../../../geometry/edge.ts'
import type { SteelLine } from '../../../geometry/straightedge.ts'
import type { Frame, RunShape } from '../../worker/protocol.ts'

/** The blade of a moment, copied: what the tools measure. @returns the field, as in geometry/pose.ts */
export const readField = (frame: Frame): Float64Array => frame.vMm.slice()

/** The edge across the blade. */
export const edgeOfField = ({ uMm, throughCount }: RunShape, vMm: Float64Array): SteelLine => ({
  atMm: uMm,
  backMm: edgeRow(vMm, throughCount),
})

/** The bevel in section at the column nearest to a place across, heights from the back. */
export const sectionAt = ({ uMm, nMm, throughCount }: RunShape, vMm: Float64Array, placeMm: number): SteelLine => {
  const half = uMm[uMm.length - 1] as number
  const share = Math.min(Math.max((placeMm / half + 1) / 2, 0), 1)
  const column = Math.round(share * (uMm.length - 1))
  return { atMm: nMm, backMm: vMm.subarray(column * throughCount, (column + 1) * throughCount) }
}
