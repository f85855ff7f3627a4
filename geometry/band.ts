import { INK_THICKNESS_MM } from './ink.ts'
import type { Bed } from './pose.ts'

/** Where the wheel has cut on one column of the bevel, in mm along the bevel; null where it has not. */
export interface Band {
  readonly fromEdgeMm: number
  readonly fromHeelMm: number
}

type Field = Pick<Bed, 'throughCount' | 'nMm'> & { readonly vMm: Float64Array; readonly vStartMm: Float64Array }

/** Steel lost at a node of a column, along v. */
const lossMm = ({ vMm, vStartMm, throughCount }: Field, i: number, j: number): number => {
  const at = i * throughCount + j
  return (vMm[at] as number) - (vStartMm[at] as number)
}

/**
 * Where the cut ends beyond its last node j, going by `step` rows: the loss falls off straight there, so it is carried on to
 * nothing, no further than the next node. As a place in rows.
 */
const endOfCut = (field: Field, i: number, j: number, step: 1 | -1): number => {
  const last = lossMm(field, i, j)
  const inner = j - step
  const within = inner >= 0 && inner < field.throughCount ? lossMm(field, i, inner) : last
  const fall = within - last
  const beyond = fall > 0 ? Math.min(last / fall, 1) : 1
  return j + step * beyond
}

/** Distance along the bevel as it was, from one row place to another, straight between nodes. */
const alongMm = ({ vStartMm, nMm, throughCount }: Field, i: number, from: number, to: number): number => {
  const at = (values: Float64Array, offset: number, place: number): number => {
    const j = Math.min(Math.floor(place), throughCount - 2)
    const low = values[offset + j] as number
    return low + ((values[offset + j + 1] as number) - low) * (place - j)
  }
  const dv = at(vStartMm, i * throughCount, to) - at(vStartMm, i * throughCount, from)
  const dn = at(nMm, 0, to) - at(nMm, 0, from)
  return Math.sqrt(dv * dv + dn * dn)
}

/** The band of one column. A cut that has reached edge or heel leaves 0 there. */
export const bandOf = (field: Field, i: number): Band | null => {
  const last = field.throughCount - 1
  let first = 0
  while (first <= last && lossMm(field, i, first) <= INK_THICKNESS_MM) first++
  if (first > last) return null
  let end = last
  while (lossMm(field, i, end) <= INK_THICKNESS_MM) end--
  const edgePlace = first === 0 ? 0 : endOfCut(field, i, first, -1)
  const heelPlace = end === last ? last : endOfCut(field, i, end, 1)
  return { fromEdgeMm: alongMm(field, i, 0, edgePlace), fromHeelMm: alongMm(field, i, heelPlace, last) }
}

/** Least distance of the cut from the edge over all columns; infinite while nothing is cut. */
export const leastFromEdgeMm = (field: Field & Pick<Bed, 'acrossCount'>): number => {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < field.acrossCount; i++) least = Math.min(least, bandOf(field, i)?.fromEdgeMm ?? least)
  return least
}

/** True when every point of the edge has been ground: the burr runs all along. */
export const burrAllAlong = (field: Field & Pick<Bed, 'acrossCount'>): boolean => {
  for (let i = 0; i < field.acrossCount; i++) if (lossMm(field, i, 0) <= INK_THICKNESS_MM) return false
  return true
}
