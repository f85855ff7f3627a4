import { type Clearance, creep, noteClearance } from './clearance.ts'
import { type Form, type Forms, type Hold, newForms } from './hold.ts'
import { type Rim, radiusAt } from './rim.ts'

/**
 * The wheel pressed into the bevel: penetration of every node at a pose, and the sums that the balance of force and moment
 * needs. Winkler bed (Johnson, Contact Mechanics, 4.3): pressure = stiffness x penetration, each patch on its own.
 *
 * The field holds the v at which material begins, row-major, one row a column of the blade:
 *
 *     index = i * throughCount + j        i: 0 left corner .. right corner,  j: 0 edge (back, n = 0) .. heel side (n = t)
 *
 * Nodes sit on both ends, which therefore carry half weights: the edge is row j = 0, the corners are nodes.
 */
export interface Bed {
  readonly acrossCount: number
  readonly throughCount: number
  /** Across, 0 on the centre line, + right. */
  readonly uMm: Float64Array
  /** From the back into the thickness. */
  readonly nMm: Float64Array
  /** Edges of each column, acrossCount + 1 of them; the outer columns are half as wide. */
  readonly columnEdgesMm: Float64Array
  /** Height of each row's share of the thickness. */
  readonly rowHeightsMm: Float64Array
  readonly hold: Hold
  readonly rim: Rim
  readonly barDistanceMm: number
  /** Sine and cosine of the tilt at which the unworn edge meets the wheel at the bevel aimed at. */
  readonly tiltSine: number
  readonly tiltCosine: number
}

/** Where the blade stands: slopes, not angles, so that every host computes the same bits. */
export interface Pose {
  /** Tangent of the turn about the bar from the set-up tilt, + into the wheel. */
  depthSlope: number
  /** Tangent of the fixture's own turn, yaw or roll, + lets the right corner be ground back. */
  turnSlope: number
  /** The blade's centre line along the wheel. */
  traverseMm: number
  /** Tangent of a roll that the fixture should not have, + like the turn. */
  rollSlope: number
}

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
})

/** The pose worked out: the forms of `Hold` with tilt and traverse, and their growth with turnSlope. */
export interface Placed {
  readonly forms: Forms
  readonly perTurn: Forms
  /** Growth of d and h with depthSlope, alike for all nodes. */
  dPerDepth: number
  hPerDepth: number
}

export const newPlaced = (): Placed => ({ forms: newForms(), perTurn: newForms(), dPerDepth: 0, hPerDepth: 0 })

const turnForm = (out: Form, a: Form, b: Form, c: Form, still: number, cosine: number, sine: number): void => {
  out.atZero = still * a.atZero + cosine * b.atZero + sine * c.atZero
  out.perU = still * a.perU + cosine * b.perU + sine * c.perU
  out.perV = still * a.perV + cosine * b.perV + sine * c.perV
  out.perN = still * a.perN + cosine * b.perN + sine * c.perN
}

/** Forms of a turn: still x unmoved part + cosine and sine parts. With still 0 and derivatives: their growth. */
const turnForms = (out: Forms, hold: Hold, still: number, cosine: number, sine: number): void => {
  turnForm(out.x, hold.still.x, hold.withCosine.x, hold.withSine.x, still, cosine, sine)
  turnForm(out.d, hold.still.d, hold.withCosine.d, hold.withSine.d, still, cosine, sine)
  turnForm(out.h, hold.still.h, hold.withCosine.h, hold.withSine.h, still, cosine, sine)
}

/** Turns x and h into each other by a roll of the whole fixture. */
const rollForms = ({ x, h }: Forms, rollSlope: number): void => {
  const cosine = 1 / Math.sqrt(1 + rollSlope * rollSlope)
  const sine = rollSlope * cosine
  const { atZero, perU, perV, perN } = x
  turnForm(x, x, x, h, 0, cosine, -sine)
  h.atZero = h.atZero * cosine + atZero * sine
  h.perU = h.perU * cosine + perU * sine
  h.perV = h.perV * cosine + perV * sine
  h.perN = h.perN * cosine + perN * sine
}

/** Works a pose out. */
export const place = ({ hold, tiltSine, tiltCosine, barDistanceMm }: Bed, pose: Pose, placed: Placed): void => {
  const { depthSlope, turnSlope, rollSlope } = pose
  const { forms, perTurn } = placed
  const cosine = 1 / Math.sqrt(1 + turnSlope * turnSlope)
  const sine = turnSlope * cosine
  turnForms(forms, hold, 1, cosine, sine)
  turnForms(perTurn, hold, 0, -sine * cosine * cosine, cosine * cosine * cosine)
  if (rollSlope !== 0) {
    rollForms(forms, rollSlope)
    rollForms(perTurn, rollSlope)
  }
  const depthSecant = Math.sqrt(1 + depthSlope * depthSlope)
  const tilted = (tiltSine - depthSlope * tiltCosine) / depthSecant
  const level = (tiltCosine + depthSlope * tiltSine) / depthSecant
  forms.x.atZero += pose.traverseMm
  forms.d.atZero += barDistanceMm * level
  forms.h.atZero -= barDistanceMm * tilted
  const tiltPerDepth = -1 / (1 + depthSlope * depthSlope)
  placed.dPerDepth = -barDistanceMm * tilted * tiltPerDepth
  placed.hPerDepth = -barDistanceMm * level * tiltPerDepth
}

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

/** What `press` fills besides the sums. */
export interface Pressing {
  readonly sums: Sums
  readonly clearance: Clearance
  /** Force of each node per stiffness, du and dn; right only for columns that may touch. */
  readonly patchMm: Float64Array
  /** Room for the rows' own share of d and h. */
  readonly rowD: Float64Array
  readonly rowH: Float64Array
}

/**
 * Presses the wheel into the field at a pose. With rho = hypot(d, h) a node is R - rho deep, and its patch of surface is
 * du dn rho / (d Dv + h Hv). Growths leave out terms of the order of depth / R, a part in 100,000: they steer the
 * search for the balance, whose figures come from the sums themselves.
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
  const { sums, clearance, patchMm, rowD, rowH } = pressing
  creep(bed, placed.forms, clearance)
  const { acrossCount, throughCount, uMm, nMm, columnEdgesMm, rowHeightsMm, rim } = bed
  const { radiusMm: R, halfWidthMm: half, shaped } = rim
  const { dPerDepth, hPerDepth } = placed
  const { atZero: X0, perU: Xu, perV: Xv, perN: Xn } = placed.forms.x
  const { atZero: D0, perU: Du, perV: Dv, perN: Dn } = placed.forms.d
  const { atZero: H0, perU: Hu, perV: Hv, perN: Hn } = placed.forms.h
  const { x: xTurn, d: dTurn, h: hTurn } = placed.perTurn
  const thicknessMm = nMm[throughCount - 1] as number
  const { leastVMm, mostVMm } = clearance
  const lowX = Math.min(Xv * leastVMm, Xv * mostVMm) + Math.min(0, Xn * thicknessMm)
  const highX = Math.max(Xv * leastVMm, Xv * mostVMm) + Math.max(0, Xn * thicknessMm)
  for (let j = 0; j < throughCount; j++) {
    rowD[j] = D0 + Dn * (nMm[j] as number)
    rowH[j] = H0 + Hn * (nMm[j] as number)
  }
  let force = 0
  let forcePerDepth = 0
  let forcePerTurn = 0
  let moment = 0
  let momentPerDepth = 0
  let momentPerTurn = 0
  let deepestMm = 0
  for (let i = 0; i < acrossCount; i++) {
    if ((clearance.columnMm[i] as number) > 0) continue
    const u = uMm[i] as number
    const columnD = Du * u
    const columnH = Hu * u
    const leftX = X0 + Xu * (columnEdgesMm[i] as number)
    const rightX = X0 + Xu * (columnEdgesMm[i + 1] as number)
    const whole = leftX + lowX >= -half && rightX + highX <= half
    let columnForce = 0
    let coveredTurn = 0
    let d1 = 0
    let dV = 0
    let dN = 0
    let h1 = 0
    let hV = 0
    let hN = 0
    let nearestSquare = Number.POSITIVE_INFINITY
    for (let j = 0, at = i * throughCount; j < throughCount; j++, at++) {
      const v = vMm[at] as number
      const d = (rowD[j] as number) + columnD + Dv * v
      const h = (rowH[j] as number) + columnH + Hv * v
      const square = d * d + h * h
      if (square < nearestSquare) nearestSquare = square
      const n = nMm[j] as number
      const shift = Xv * v + Xn * n
      const radius = shaped ? radiusAt(rim, X0 + Xu * u + shift) : R
      if (square >= radius * radius) {
        patchMm[at] = 0
        continue
      }
      const covered = whole ? 1 : coverage(leftX + shift, rightX + shift, half)
      const rho = Math.sqrt(square)
      const depth = radius - rho
      const facing = covered / (d * Dv + h * Hv)
      patchMm[at] = depth * rho * facing
      if (covered === 0) continue
      const rowHeightMm = rowHeightsMm[j] as number
      const share = depth * rho * facing * rowHeightMm
      if (depth > deepestMm) deepestMm = depth
      columnForce += share
      const dFacing = d * facing * rowHeightMm
      const hFacing = h * facing * rowHeightMm
      d1 += dFacing
      dV += dFacing * v
      dN += dFacing * n
      h1 += hFacing
      hV += hFacing * v
      hN += hFacing * n
      if (covered < 1) {
        const drift = xTurn.atZero + xTurn.perU * u + xTurn.perV * v + xTurn.perN * n
        const entering = leftX + shift < -half ? drift : 0
        const leaving = rightX + shift > half ? drift : 0
        coveredTurn += (share / covered) * ((entering - leaving) / (rightX - leftX))
      }
    }
    noteClearance(clearance, i, nearestSquare, R + rim.highestMm)
    if (columnForce === 0) continue
    const scale = stiffness * ((columnEdgesMm[i + 1] as number) - (columnEdgesMm[i] as number))
    const arm = u - loadPlaceMm
    const perDepth = -scale * (dPerDepth * d1 + hPerDepth * h1)
    const turnD = (dTurn.atZero + dTurn.perU * u) * d1 + dTurn.perV * dV + dTurn.perN * dN
    const turnH = (hTurn.atZero + hTurn.perU * u) * h1 + hTurn.perV * hV + hTurn.perN * hN
    const perTurn = scale * (coveredTurn - turnD - turnH)
    force += scale * columnForce
    forcePerDepth += perDepth
    forcePerTurn += perTurn
    moment += scale * columnForce * arm
    momentPerDepth += perDepth * arm
    momentPerTurn += perTurn * arm
  }
  sums.force = force
  sums.forcePerDepth = forcePerDepth
  sums.forcePerTurn = forcePerTurn
  sums.moment = moment
  sums.momentPerDepth = momentPerDepth
  sums.momentPerTurn = momentPerTurn
  sums.deepestMm = deepestMm
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
