import { type Clearance, creep, isNear, NEAR_MM, noteClearance } from './clearance.ts'
import { coverage, type Pressed, pressColumn, pressColumnAtRim } from './column.ts'
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
  past: false,
})

/** What `press` fills. */
export interface Pressing extends Pressed {
  readonly sums: Sums
  readonly clearance: Clearance
}

/**
 * Adds a column to the sums. A column's v grows nearly straight through the thickness, and what touches stands about one row:
 * enough for its growth with the turn.
 */
const addColumn = (
  bed: Bed,
  vMm: Float64Array,
  { forms, perTurn, dPerDepth, hPerDepth }: Placed,
  { sums, column }: Pressing,
  stiffness: number,
  loadPlaceMm: number,
  i: number,
): void => {
  const { throughCount, uMm, nMm, columnEdgesMm } = bed
  const u = uMm[i] as number
  const edgeV = vMm[i * throughCount] as number
  const rise = ((vMm[(i + 1) * throughCount - 1] as number) - edgeV) / (nMm[throughCount - 1] as number)
  const n = column.facingThrough / column.facing
  const v = edgeV + rise * n
  const scale = stiffness * ((columnEdgesMm[i + 1] as number) - (columnEdgesMm[i] as number))
  const arm = u - loadPlaceMm
  const dFacing = column.heightMm / forms.d.perV
  const hFacing = (forms.h.atZero + forms.h.perU * u + forms.h.perN * n) * column.facing
  const dPerTurn = perTurn.d.atZero + perTurn.d.perU * u + perTurn.d.perV * v + perTurn.d.perN * n
  const hPerTurn = perTurn.h.atZero + perTurn.h.perU * u + perTurn.h.perV * v + perTurn.h.perN * n
  const force = scale * column.force
  const forcePerDepth = -scale * (dPerDepth * dFacing + hPerDepth * hFacing)
  const forcePerTurn = scale * (column.perTurn - dPerTurn * dFacing - hPerTurn * hFacing)
  sums.force += force
  sums.forcePerDepth += forcePerDepth
  sums.forcePerTurn += forcePerTurn
  sums.moment += force * arm
  sums.momentPerDepth += forcePerDepth * arm
  sums.momentPerTurn += forcePerTurn * arm
}

const clearSums = (sums: Sums): void => {
  sums.force = 0
  sums.forcePerDepth = 0
  sums.forcePerTurn = 0
  sums.moment = 0
  sums.momentPerDepth = 0
  sums.momentPerTurn = 0
  sums.past = false
}

/**
 * Presses the wheel into the field at a pose, column by column, and fills the sums. At a pose near to the last one it
 * looks only where that one touched or nearly did. Growths leave out terms of the order of depth / R, a part in 100,000: they steer the search for
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
  const { sums, clearance, column } = pressing
  const { acrossCount, throughCount, nMm, columnEdgesMm, rim } = bed
  const { columnMm, rows, leastVMm, mostVMm } = clearance
  const { x } = placed.forms
  const highestMm = rim.radiusMm + rim.highestMm
  const thicknessMm = nMm[nMm.length - 1] as number
  const lowX = x.atZero + Math.min(x.perV * leastVMm, x.perV * mostVMm) + Math.min(0, x.perN * thicknessMm)
  const highX = x.atZero + Math.max(x.perV * leastVMm, x.perV * mostVMm) + Math.max(0, x.perN * thicknessMm)
  const near = isNear(bed, placed.forms, clearance)
  if (!near) creep(bed, placed.forms, clearance)
  clearSums(sums)
  for (let i = 0; i < acrossCount; i++) {
    if (!near) rows[i] = (columnMm[i] as number) > NEAR_MM ? 0 : throughCount
    if (rows[i] === 0) continue
    const left = lowX + x.perU * (columnEdgesMm[i] as number)
    const right = highX + x.perU * (columnEdgesMm[i + 1] as number)
    const atRim = rim.shaped || left < -rim.halfWidthMm || right > rim.halfWidthMm
    if (atRim) pressColumnAtRim(bed, vMm, placed, pressing, i)
    else pressColumn(bed, vMm, placed, pressing, i, rows[i] as number)
    if (!near) {
      rows[i] = column.nearRows
      noteClearance(clearance, i, column.nearestSquare, highestMm)
    }
    if (column.past) sums.past = true
    if (column.facing !== 0) addColumn(bed, vMm, placed, pressing, stiffness, loadPlaceMm, i)
  }
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
