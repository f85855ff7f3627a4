import { NEAR_MM } from './clearance.ts'
import type { Bed, Placed } from './pose.ts'
import { radiusAt } from './rim.ts'

/**
 * One column of the bevel under the wheel, row by row from the edge. With rho = hypot(d, h) a node is R - rho deep; its patch
 * of surface is du dn rho / (d Dv), Dv how far d grows with v (h does not, see `Placed`).
 */
export interface Column {
  /** Force per stiffness and du. */
  force: number
  /** Height of the rows that touch: the sum of d facing Dv, facing = 1 / (d Dv). */
  heightMm: number
  /** Facing summed over their heights, and facing x n. */
  facing: number
  facingThrough: number
  /** Growth of the force with turnSlope by coverage alone. */
  perTurn: number
  /** A node has gone past the wheel's axis, where going in no longer presses: the sums mean nothing. */
  past: boolean
  /** Rows from the edge on beyond which none touches or stands within `NEAR_MM` of touching. */
  nearRows: number
  /** Square of the least distance of a node from the axis; less than the wheel's, and no more than that, where one touches. */
  nearestSquare: number
}

/** A column to be filled again and again. */
export const newColumn = (): Column => ({
  force: 0,
  heightMm: 0,
  facing: 0,
  facingThrough: 0,
  perTurn: 0,
  past: false,
  nearRows: 0,
  nearestSquare: 0,
})

/** What pressing a column fills. */
export interface Pressed {
  /** Force of each node per stiffness, du and dn. */
  readonly patchMm: Float64Array
  readonly column: Column
}

/**
 * Presses the first rows of a column that the wheel, a true cylinder, covers whole. The engine spends half its time here:
 * what a node that stands clear does not need is worked out for those that touch alone.
 */
export const pressColumn = (
  bed: Bed,
  vMm: Float64Array,
  { forms }: Placed,
  { patchMm, column }: Pressed,
  i: number,
  rows: number,
): void => {
  const { throughCount, uMm, nMm, rowHeightsMm } = bed
  const R = bed.rim.radiusMm
  const square = R * R
  const nearSquare = (R + NEAR_MM) * (R + NEAR_MM)
  const { perV: Dv, perN: Dn } = forms.d
  const Hn = forms.h.perN
  const d0 = forms.d.atZero + forms.d.perU * (uMm[i] as number)
  const h0 = forms.h.atZero + forms.h.perU * (uMm[i] as number)
  const perDv = 1 / Dv
  let force = 0
  let heightMm = 0
  let facingSum = 0
  let facingThrough = 0
  let past = false
  let nearRows = 0
  let freeSquare = Number.POSITIVE_INFINITY
  for (let j = 0, at = i * throughCount; j < rows; j++, at++) {
    const n = nMm[j] as number
    const rowHeightMm = rowHeightsMm[j] as number
    const d = d0 + Dv * (vMm[at] as number) + Dn * n
    const h = h0 + Hn * n
    const rhoSquare = d * d + h * h
    let patch = 0
    if (rhoSquare < square) {
      const rho = Math.sqrt(rhoSquare)
      const facing = perDv / d
      patch = (R - rho) * rho * facing
      const weight = facing * rowHeightMm
      force += patch * rowHeightMm
      heightMm += rowHeightMm
      facingSum += weight
      facingThrough += weight * n
      if (d <= 0) past = true
      nearRows = j + 1
    } else {
      if (rhoSquare < nearSquare) nearRows = j + 1
      if (rhoSquare < freeSquare) freeSquare = rhoSquare
    }
    patchMm[at] = patch
  }
  column.force = force
  column.heightMm = heightMm
  column.facing = facingSum
  column.facingThrough = facingThrough
  column.perTurn = 0
  column.past = past
  column.nearRows = nearRows
  column.nearestSquare = heightMm > 0 ? 0 : freeSquare
}

/**
 * Share of a node's column that the wheel covers, 0 to 1. Continuous in the pose: with a hard cut-off the moment would
 * jump and no balance exist.
 * @param left and @param right the column's borders along the wheel, @param half of the wheel's width
 */
export const coverage = (left: number, right: number, half: number): number => {
  if (left >= -half && right <= half) return 1
  const covered = Math.min(right, half) - Math.max(left, -half)
  return covered <= 0 ? 0 : covered / (right - left)
}

/** The same where the wheel is not a true cylinder or its rim runs through the column; all rows count as near. */
export const pressColumnAtRim = (
  bed: Bed,
  vMm: Float64Array,
  placed: Placed,
  { patchMm, column }: Pressed,
  i: number,
): void => {
  const { throughCount, uMm, nMm, columnEdgesMm, rowHeightsMm, rim } = bed
  const { x, d: dForm, h: hForm } = placed.forms
  const xTurn = placed.perTurn.x
  const half = rim.halfWidthMm
  const u = uMm[i] as number
  const leftX = x.atZero + x.perU * (columnEdgesMm[i] as number)
  const rightX = x.atZero + x.perU * (columnEdgesMm[i + 1] as number)
  const d0 = dForm.atZero + dForm.perU * u
  const h0 = hForm.atZero + hForm.perU * u
  let force = 0
  let heightMm = 0
  let facingSum = 0
  let facingThrough = 0
  let perTurn = 0
  let past = false
  let nearestSquare = Number.POSITIVE_INFINITY
  for (let j = 0, at = i * throughCount; j < throughCount; j++, at++) {
    const v = vMm[at] as number
    const n = nMm[j] as number
    const d = d0 + dForm.perV * v + dForm.perN * n
    const h = h0 + hForm.perN * n
    const shift = x.perV * v + x.perN * n
    const rhoSquare = d * d + h * h
    if (rhoSquare < nearestSquare) nearestSquare = rhoSquare
    const radius = rim.shaped ? radiusAt(rim, x.atZero + x.perU * u + shift) : rim.radiusMm
    const covered = rhoSquare < radius * radius ? coverage(leftX + shift, rightX + shift, half) : 0
    if (covered === 0) {
      patchMm[at] = 0
      continue
    }
    const rho = Math.sqrt(rhoSquare)
    const facing = covered / (d * dForm.perV)
    const patch = (radius - rho) * rho * facing
    patchMm[at] = patch
    const rowHeightMm = rowHeightsMm[j] as number
    const weight = facing * rowHeightMm
    force += patch * rowHeightMm
    heightMm += covered * rowHeightMm
    facingSum += weight
    facingThrough += weight * n
    if (d <= 0) past = true
    if (covered === 1) continue
    const drift = xTurn.atZero + xTurn.perU * u + xTurn.perV * v + xTurn.perN * n
    const entering = leftX + shift < -half ? drift : 0
    const leaving = rightX + shift > half ? drift : 0
    perTurn += ((patch / covered) * rowHeightMm * (entering - leaving)) / (rightX - leftX)
  }
  column.force = force
  column.heightMm = heightMm
  column.facing = facingSum
  column.facingThrough = facingThrough
  column.perTurn = perTurn
  column.past = past
  column.nearRows = throughCount
  column.nearestSquare = nearestSquare
}
