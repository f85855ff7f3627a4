import { type Form, type Forms, newForms } from './hold.ts'
import type { Bed } from './pose.ts'

/**
 * How far each column is known to stand off the wheel, so that columns out of reach are passed over. Exact: a pose may
 * move a column by no more than `creep` says, and wear only takes it further away; the sums are the same to the last bit.
 */
export interface Clearance {
  /** At least this far from touching, per column; 0 or less where it may touch. */
  readonly columnMm: Float64Array
  /** Bounds of v in the field. */
  readonly leastVMm: number
  mostVMm: number
  /** The pose that the clearances were last brought up to. */
  readonly forms: Forms
}

/** Nothing known yet: every column may touch. */
export const newClearance = (vMm: Float64Array, acrossCount: number): Clearance => ({
  columnMm: new Float64Array(acrossCount),
  leastVMm: vMm.reduce((least, v) => Math.min(least, v), Number.POSITIVE_INFINITY),
  mostVMm: vMm.reduce((most, v) => Math.max(most, v), Number.NEGATIVE_INFINITY),
  forms: newForms(),
})

const copyForm = (to: Form, from: Form): void => {
  to.atZero = from.atZero
  to.perU = from.perU
  to.perV = from.perV
  to.perN = from.perN
}

/** Brings the clearances to a new pose: what every column may have come nearer is taken off. */
export const creep = ({ acrossCount, uMm, nMm }: Bed, { d, h }: Forms, clearance: Clearance): void => {
  const { columnMm, leastVMm, mostVMm, forms } = clearance
  const furthestVMm = Math.max(Math.abs(leastVMm), Math.abs(mostVMm))
  const thicknessMm = nMm[nMm.length - 1] as number
  const withinMm =
    (Math.abs(d.perV - forms.d.perV) + Math.abs(h.perV - forms.h.perV)) * furthestVMm +
    (Math.abs(d.perN - forms.d.perN) + Math.abs(h.perN - forms.h.perN)) * thicknessMm
  const dMoves = d.atZero - forms.d.atZero
  const hMoves = h.atZero - forms.h.atZero
  const dPerMm = d.perU - forms.d.perU
  const hPerMm = h.perU - forms.h.perU
  for (let i = 0; i < acrossCount; i++) {
    const u = uMm[i] as number
    const movesMm = Math.abs(dMoves + dPerMm * u) + Math.abs(hMoves + hPerMm * u) + withinMm
    columnMm[i] = (columnMm[i] as number) - movesMm
  }
  copyForm(forms.d, d)
  copyForm(forms.h, h)
}

/** A hair (mm) kept back from each clearance for the rounding of distances of some hundred millimetres. */
const ROUNDING_MM = 1e-10

/** Keeps how far a column was found to stand off a wheel of some radius. @param nearestSquare of its nearest node's distance */
export const noteClearance = ({ columnMm }: Clearance, i: number, nearestSquare: number, radiusMm: number): void => {
  columnMm[i] =
    nearestSquare < radiusMm * radiusMm
      ? 0
      : Math.max(Math.sqrt(nearestSquare) - radiusMm - ROUNDING_MM, Number.MIN_VALUE)
}
