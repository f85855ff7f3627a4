import { type Clearance, creep, noteClearance } from './clearance.ts'
import type { Form } from './hold.ts'
import type { Bed, Placed } from './pose.ts'
import { radiusAt } from './rim.ts'

/**
 * The wheel pressed into the bevel: penetration of every node at a pose, and the sums that the balance of force and moment
 * needs. Winkler bed (Johnson, Contact Mechanics, 4.3): pressure = stiffness x penetration, each patch on its own.
 */

/** Sums over the nodes that touch, filled by `press`. Force in N, moments in N mm about the load place. */
export interface Sums {
  force: number
  forcePerDepth: number
  forcePerTurn: number
  moment: number
  momentPerDepth: number
  momentPerTurn: number
  /** Deepest penetration; 0 while nothing touches. */
  deepestMm: number
  /** A node has gone past the wheel's axis, where going in no longer presses: the pose is too deep and the sums mean nothing. */
  past: boolean
}

/** Fresh sums, to be filled again and again. */
export const newSums = (): Sums => ({
  force: 0,
  forcePerDepth: 0,
  forcePerTurn: 0,
  moment: 0,
  momentPerDepth: 0,
  momentPerTurn: 0,
  deepestMm: 0,
  past: false,
})

/**
 * Share of a node's column that the wheel covers, 0 to 1. Continuous in the pose: with a hard cut-off the moment would
 * jump and no balance exist.
 * @param left and @param right the column's borders along the wheel, @param half of the wheel's width
 */
const coverage = (left: number, right: number, half: number): number => {
  if (left >= -half && right <= half) return 1
  const covered = Math.min(right, half) - Math.max(left, -half)
  return covered <= 0 ? 0 : covered / (right - left)
}

/** What `press` fills. */
export interface Pressing {
  readonly sums: Sums
  readonly clearance: Clearance
  /** Force of each node per stiffness, du and dn; right only for columns whose clearance is not above 0. */
  readonly patchMm: Float64Array
  readonly column: Column
}

/** Sums of the column at work. */
interface Column {
  /** Force per stiffness and du. */
  force: number
  /** Weights of d and h, and of their growth through the thickness, in the growth of the force. */
  d: number
  dThrough: number
  h: number
  hThrough: number
  /** Growth of the force with turnSlope by coverage alone. */
  perTurn: number
  /** As in `Sums`. */
  past: boolean
}

export const newColumn = (): Column => ({
  force: 0,
  d: 0,
  dThrough: 0,
  h: 0,
  hThrough: 0,
  perTurn: 0,
  past: false,
})

/**
 * Presses a column that the wheel, a true cylinder, covers whole. With rho = hypot(d, h) a node is R - rho deep.
 * @returns square of the column's least distance from the wheel's axis
 */
const pressColumn = (
  bed: Bed,
  vMm: Float64Array,
  { forms }: Placed,
  { patchMm, column }: Pressing,
  i: number,
): number => {
  const { throughCount, uMm, nMm, rowHeightsMm } = bed
  const R = bed.rim.radiusMm
  const square = R * R
  const { perV: Dv, perN: Dn } = forms.d
  const { perV: Hv, perN: Hn } = forms.h
  const d0 = forms.d.atZero + forms.d.perU * (uMm[i] as number)
  const h0 = forms.h.atZero + forms.h.perU * (uMm[i] as number)
  let least = Number.POSITIVE_INFINITY
  let force = 0
  let dSum = 0
  let dThrough = 0
  let hSum = 0
  let hThrough = 0
  let past = false
  for (let j = 0, at = i * throughCount; j < throughCount; j++, at++) {
    const v = vMm[at] as number
    const n = nMm[j] as number
    const d = d0 + Dv * v + Dn * n
    const h = h0 + Hv * v + Hn * n
    const rhoSquare = d * d + h * h
    if (rhoSquare < least) least = rhoSquare
    if (rhoSquare >= square) {
      patchMm[at] = 0
      continue
    }
    const towards = d * Dv + h * Hv
    if (towards <= 0) past = true
    const facing = 1 / towards
    const rho = Math.sqrt(rhoSquare)
    const patch = (R - rho) * rho * facing
    patchMm[at] = patch
    const rowHeightMm = rowHeightsMm[j] as number
    force += patch * rowHeightMm
    const weight = facing * rowHeightMm
    const dWeight = d * weight
    const hWeight = h * weight
    dSum += dWeight
    dThrough += dWeight * n
    hSum += hWeight
    hThrough += hWeight * n
  }
  column.force = force
  column.d = dSum
  column.dThrough = dThrough
  column.h = hSum
  column.hThrough = hThrough
  column.perTurn = 0
  column.past = past
  return least
}

/** The same where the wheel is not a true cylinder or its rim runs through the column. */
const pressColumnAtRim = (
  bed: Bed,
  vMm: Float64Array,
  placed: Placed,
  { patchMm, column }: Pressing,
  i: number,
): number => {
  const { throughCount, uMm, nMm, columnEdgesMm, rowHeightsMm, rim } = bed
  const { x, d: dForm, h: hForm } = placed.forms
  const xTurn = placed.perTurn.x
  const half = rim.halfWidthMm
  const u = uMm[i] as number
  const leftX = x.atZero + x.perU * (columnEdgesMm[i] as number)
  const rightX = x.atZero + x.perU * (columnEdgesMm[i + 1] as number)
  const d0 = dForm.atZero + dForm.perU * u
  const h0 = hForm.atZero + hForm.perU * u
  let least = Number.POSITIVE_INFINITY
  let force = 0
  let dSum = 0
  let dThrough = 0
  let hSum = 0
  let hThrough = 0
  let perTurn = 0
  let past = false
  for (let j = 0, at = i * throughCount; j < throughCount; j++, at++) {
    const v = vMm[at] as number
    const n = nMm[j] as number
    const d = d0 + dForm.perV * v + dForm.perN * n
    const h = h0 + hForm.perV * v + hForm.perN * n
    const shift = x.perV * v + x.perN * n
    const rhoSquare = d * d + h * h
    if (rhoSquare < least) least = rhoSquare
    const radius = rim.shaped ? radiusAt(rim, x.atZero + x.perU * u + shift) : rim.radiusMm
    const covered = rhoSquare < radius * radius ? coverage(leftX + shift, rightX + shift, half) : 0
    if (covered === 0) {
      patchMm[at] = 0
      continue
    }
    const rho = Math.sqrt(rhoSquare)
    const towards = d * dForm.perV + h * hForm.perV
    if (towards <= 0) past = true
    const facing = covered / towards
    const patch = (radius - rho) * rho * facing
    patchMm[at] = patch
    const rowHeightMm = rowHeightsMm[j] as number
    const weight = facing * rowHeightMm
    force += patch * rowHeightMm
    dSum += d * weight
    dThrough += d * weight * n
    hSum += h * weight
    hThrough += h * weight * n
    if (covered === 1) continue
    const drift = xTurn.atZero + xTurn.perU * u + xTurn.perV * v + xTurn.perN * n
    const entering = leftX + shift < -half ? drift : 0
    const leaving = rightX + shift > half ? drift : 0
    perTurn += ((patch / covered) * rowHeightMm * (entering - leaving)) / (rightX - leftX)
  }
  column.force = force
  column.d = dSum
  column.dThrough = dThrough
  column.h = hSum
  column.hThrough = hThrough
  column.perTurn = perTurn
  column.past = past
  return least
}

/** Adds a column to the sums. A column's v grows nearly straight through the thickness, which is all its growth needs. */
const addColumn = (
  bed: Bed,
  vMm: Float64Array,
  placed: Placed,
  pressing: Pressing,
  stiffness: number,
  loadPlaceMm: number,
  i: number,
): void => {
  const { sums, column } = pressing
  const { throughCount, uMm, nMm, columnEdgesMm } = bed
  const { d: dTurn, h: hTurn } = placed.perTurn
  const u = uMm[i] as number
  const edgeV = vMm[i * throughCount] as number
  const rise = ((vMm[(i + 1) * throughCount - 1] as number) - edgeV) / (nMm[throughCount - 1] as number)
  const scale = stiffness * ((columnEdgesMm[i + 1] as number) - (columnEdgesMm[i] as number))
  const arm = u - loadPlaceMm
  const dPerTurn =
    (dTurn.atZero + dTurn.perU * u + dTurn.perV * edgeV) * column.d + (dTurn.perV * rise + dTurn.perN) * column.dThrough
  const hPerTurn =
    (hTurn.atZero + hTurn.perU * u + hTurn.perV * edgeV) * column.h + (hTurn.perV * rise + hTurn.perN) * column.hThrough
  const force = scale * column.force
  const perDepth = -scale * (placed.dPerDepth * column.d + placed.hPerDepth * column.h)
  const perTurn = scale * (column.perTurn - dPerTurn - hPerTurn)
  sums.force += force
  sums.forcePerDepth += perDepth
  sums.forcePerTurn += perTurn
  sums.moment += force * arm
  sums.momentPerDepth += perDepth * arm
  sums.momentPerTurn += perTurn * arm
}

const clearSums = (sums: Sums): void => {
  sums.force = 0
  sums.forcePerDepth = 0
  sums.forcePerTurn = 0
  sums.moment = 0
  sums.momentPerDepth = 0
  sums.momentPerTurn = 0
  sums.deepestMm = 0
  sums.past = false
}

/**
 * Presses the wheel into the field at a pose, column by column, and fills the sums. A node's patch of surface is
 * du dn rho / (d Dv + h Hv). Growths leave out terms of the order of depth / R, a part in 100,000: they steer the search for
 * the balance, whose figures come from the sums themselves.
 *
 * @param stiffness of the bed, N/mm^3
 * @param loadPlaceMm where the moments are taken about
 */
export const press = (
  bed: Bed,
  vMm: Float64Array,
  placed: Placed,
  pressing: Pressing,
  stiffness: number,
  loadPlaceMm: number,
): void => {
  const { sums, clearance } = pressing
  const { acrossCount, nMm, columnEdgesMm, rim } = bed
  const { columnMm, leastVMm, mostVMm } = clearance
  const { x } = placed.forms
  const highestMm = rim.radiusMm + rim.highestMm
  const highestSquare = highestMm * highestMm
  const thicknessMm = nMm[nMm.length - 1] as number
  const lowX = x.atZero + Math.min(x.perV * leastVMm, x.perV * mostVMm) + Math.min(0, x.perN * thicknessMm)
  const highX = x.atZero + Math.max(x.perV * leastVMm, x.perV * mostVMm) + Math.max(0, x.perN * thicknessMm)
  creep(bed, placed.forms, clearance)
  clearSums(sums)
  let leastSquare = highestSquare
  for (let i = 0; i < acrossCount; i++) {
    if ((columnMm[i] as number) > 0) continue
    const left = lowX + x.perU * (columnEdgesMm[i] as number)
    const right = highX + x.perU * (columnEdgesMm[i + 1] as number)
    const atRim = rim.shaped || left < -rim.halfWidthMm || right > rim.halfWidthMm
    const square = (atRim ? pressColumnAtRim : pressColumn)(bed, vMm, placed, pressing, i)
    noteClearance(clearance, i, square, highestMm)
    if (square >= highestSquare) continue
    if (square < leastSquare) leastSquare = square
    if (pressing.column.past) sums.past = true
    addColumn(bed, vMm, placed, pressing, stiffness, loadPlaceMm, i)
  }
  if (sums.force > 0) sums.deepestMm = highestMm - Math.sqrt(leastSquare)
}

/** The node nearest to the wheel. */
export interface Nearest {
  /** Negative while it does not touch. */
  depthMm: number
  /** Growth of its depth with depthSlope. */
  perDepth: number
}

/** Finds the covered node nearest to the wheel, so that a blade which hangs free can be lowered onto it. */
export const nearestNode = (bed: Bed, vMm: Float64Array, { forms, dPerDepth, hPerDepth }: Placed): Nearest | null => {
  const { throughCount, uMm, nMm, columnEdgesMm, rim } = bed
  const at = (form: Form, u: number, v: number, n: number) =>
    form.atZero + form.perU * u + form.perV * v + form.perN * n
  let nearest: Nearest | null = null
  for (let k = 0; k < vMm.length; k++) {
    const i = Math.floor(k / throughCount)
    const [u, v, n] = [uMm[i] as number, vMm[k] as number, nMm[k % throughCount] as number]
    const left = at(forms.x, columnEdgesMm[i] as number, v, n)
    const right = at(forms.x, columnEdgesMm[i + 1] as number, v, n)
    if (coverage(left, right, rim.halfWidthMm) === 0) continue
    const d = at(forms.d, u, v, n)
    const h = at(forms.h, u, v, n)
    const rho = Math.sqrt(d * d + h * h)
    const depthMm = radiusAt(rim, at(forms.x, u, v, n)) - rho
    if (nearest && nearest.depthMm >= depthMm) continue
    nearest = { depthMm, perDepth: -(d * dPerDepth + h * hPerDepth) / rho }
  }
  return nearest
}
