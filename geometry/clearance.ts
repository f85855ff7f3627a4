import { type Form, type Forms, newForms } from './hold.ts'
import type { Bed } from './pose.ts'

/**
 * How far the bevel is known to stand off the wheel, so that what is out of reach is passed over: whole columns as the blade
 * moves, and rows at poses near by. Exact: a pose may bring a column no nearer than `creep` says, and wear only takes it further
 * away; the sums are the same to the last bit.
 */
export interface Clearance {
  /** At least this far from touching, per column; 0 or less where it may touch. */
  readonly columnMm: Float64Array
  /** Per column, rows from the edge on beyond which none touches at any pose near to `forms`. */
  readonly rows: Int32Array
  /** Bounds of v in the field. */
  readonly leastVMm: number
  mostVMm: number
  /** The pose that all this was last brought up to. */
  readonly forms: Forms
}

/** A pose is near to another if no node moves further than this between them (mm): ten times what a guess misses by. */
export const NEAR_MM = 1e-3

export const newClearance = (vMm: Float64Array, acrossCount: number): Clearance => {
  const clearance = {
    columnMm: new Float64Array(acrossCount),
    rows: new Int32Array(acrossCount),
    leastVMm: vMm.reduce((least, v) => Math.min(least, v), Number.POSITIVE_INFINITY),
    mostVMm: vMm.reduce((most, v) => Math.max(most, v), Number.NEGATIVE_INFINITY),
    forms: newForms(),
  }
  forget(clearance)
  return clearance
}

/** Nothing is known any more: every column may touch, and no pose is near. */
export const forget = ({ columnMm, forms }: Clearance): void => {
  columnMm.fill(0)
  forms.d.atZero = Number.POSITIVE_INFINITY
}

const copyForm = (to: Form, from: Form): void => {
  to.atZero = from.atZero
  to.perU = from.perU
  to.perV = from.perV
  to.perN = from.perN
}

/** Furthest that a coordinate changes from one pose to another by v and n, in mm. */
const changeWithin = (from: Form, to: Form, vMm: number, nMm: number): number =>
  Math.abs(to.perV - from.perV) * vMm + Math.abs(to.perN - from.perN) * nMm

/** Furthest that a coordinate changes from one pose to another over the whole blade, in mm. */
const change = (from: Form, to: Form, uMm: number, vMm: number, nMm: number): number =>
  Math.abs(to.atZero - from.atZero) + Math.abs(to.perU - from.perU) * uMm + changeWithin(from, to, vMm, nMm)

const furthestVMm = ({ leastVMm, mostVMm }: Clearance): number => Math.max(Math.abs(leastVMm), Math.abs(mostVMm))

/** Whether a pose is so near to the last one that its `rows` hold. */
export const isNear = ({ uMm, nMm }: Bed, { d, h }: Forms, clearance: Clearance): boolean => {
  const { forms } = clearance
  const u = uMm[uMm.length - 1] as number
  const v = furthestVMm(clearance)
  const n = nMm[nMm.length - 1] as number
  return change(forms.d, d, u, v, n) + change(forms.h, h, u, v, n) < NEAR_MM
}

/** Furthest that a coordinate of a node lies from that of the blade's middle, in mm. */
const reach = (form: Form, uMm: number, vMm: number, nMm: number): number =>
  Math.abs(form.perU) * uMm + Math.abs(form.perV) * vMm + Math.abs(form.perN) * nMm

/**
 * Brings the columns' clearances to a new pose: what each may have come nearer is taken off, what it surely went away is added. A
 * distance from the axis is convex in (d, h), so a node standing in direction e that moves by m ends at least e m further. The
 * directions of two nodes p, q differ by 2 |p - q| / (|p| + |q|) at most (Dunkl and Williams 1964), so the direction of the blade's middle
 * serves for all, within that spread of m.
 */
export const creep = (bed: Bed, { d, h }: Forms, clearance: Clearance): void => {
  const { acrossCount, uMm, nMm } = bed
  const { columnMm, leastVMm, mostVMm, forms } = clearance
  const u = uMm[acrossCount - 1] as number
  const v = (mostVMm - leastVMm) / 2
  const n = (nMm[nMm.length - 1] as number) / 2
  const dMid = forms.d.atZero + forms.d.perV * (leastVMm + v) + forms.d.perN * n
  const hMid = forms.h.atZero + forms.h.perV * (leastVMm + v) + forms.h.perN * n
  const rhoMid = Math.sqrt(dMid * dMid + hMid * hMid)
  const spread = (2 * (reach(forms.d, u, v, n) + reach(forms.h, u, v, n))) / (rhoMid + bed.rim.radiusMm)
  const dMoves = d.atZero - forms.d.atZero
  const hMoves = h.atZero - forms.h.atZero
  const dPerMm = d.perU - forms.d.perU
  const hPerMm = h.perU - forms.h.perU
  const furthest = furthestVMm(clearance)
  const withinMm = changeWithin(forms.d, d, furthest, 2 * n) + changeWithin(forms.h, h, furthest, 2 * n)
  const away = (dMoves * dMid + hMoves * hMid) / rhoMid
  const awayPerMm = (dPerMm * dMid + hPerMm * hMid) / rhoMid
  for (let i = 0; i < acrossCount; i++) {
    const clearMm = columnMm[i] as number
    if (clearMm <= 0) continue
    const u = uMm[i] as number
    const movesMm = Math.abs(dMoves + dPerMm * u) + Math.abs(hMoves + hPerMm * u)
    columnMm[i] = clearMm + away + awayPerMm * u - spread * movesMm - withinMm
  }
  copyForm(forms.d, d)
  copyForm(forms.h, h)
}

/** A hair (mm) kept back from each clearance for the rounding of distances of some hundred millimetres. */
const ROUNDING_MM = 1e-10

/** Keeps how far a column was found to stand off a wheel of some radius. @param nearestSquare of its nearest node's distance */
export const noteClearance = ({ columnMm }: Clearance, i: number, nearestSquare: number, radiusMm: number): void => {
  columnMm[i] = nearestSquare < radiusMm * radiusMm ? 0 : Math.sqrt(nearestSquare) - radiusMm - ROUNDING_MM
}
