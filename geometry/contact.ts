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
  readonly wheelRadiusMm: number
  readonly wheelHalfWidthMm: number
  readonly projectionMm: number
  readonly seatOffsetMm: number
  readonly barDistanceMm: number
  /** Sine and cosine of the tilt at which the unworn edge meets the wheel at the bevel aimed at. */
  readonly tiltSine: number
  readonly tiltCosine: number
  readonly pivotUMm: number
  readonly pivotVMm: number
}

/** Where the blade stands: slopes, not angles, so that every host computes the same bits. */
export interface Pose {
  /** Tangent of the turn about the bar from the set-up tilt, + into the wheel. */
  depthSlope: number
  /** Tangent of the yaw, + lets the right corner be ground back. */
  yawSlope: number
  /** The blade's centre line along the wheel. */
  traverseMm: number
}

/** Sums over the nodes that touch, filled by `press`. Force in N, moments in N mm about the load place. */
export interface Sums {
  force: number
  forcePerDepth: number
  forcePerYaw: number
  moment: number
  momentPerDepth: number
  momentPerYaw: number
  /** Deepest penetration; 0 while nothing touches. */
  deepestMm: number
}

/** Fresh sums, to be filled again and again. */
export const newSums = (): Sums => ({
  force: 0,
  forcePerDepth: 0,
  forcePerYaw: 0,
  moment: 0,
  momentPerDepth: 0,
  momentPerYaw: 0,
  deepestMm: 0,
})

/** The pose as the plain figures the node loop needs; reused, never allocated in a step. */
export interface Placed {
  secant: number
  yawSine: number
  yawCosine: number
  tiltSine: number
  tiltCosine: number
  /** Turn of the tilt for a growth of depthSlope, negative. */
  tiltPerDepth: number
  /** d = fixedMm - u sin(yaw) + v cos(yaw), the plan distance from the wheel's axis. */
  fixedMm: number
  axisNMm: number
  /** x = acrossMm + u cos(yaw) + v sin(yaw), the place along the wheel. */
  acrossMm: number
}

export const newPlaced = (): Placed => ({
  secant: 1,
  yawSine: 0,
  yawCosine: 1,
  tiltSine: 0,
  tiltCosine: 1,
  tiltPerDepth: -1,
  fixedMm: 0,
  axisNMm: 0,
  acrossMm: 0,
})

/** Works a pose out. */
export const place = (bed: Bed, pose: Pose, placed: Placed): void => {
  const { depthSlope, yawSlope } = pose
  const depthSecant = Math.sqrt(1 + depthSlope * depthSlope)
  placed.tiltSine = (bed.tiltSine - depthSlope * bed.tiltCosine) / depthSecant
  placed.tiltCosine = (bed.tiltCosine + depthSlope * bed.tiltSine) / depthSecant
  placed.tiltPerDepth = -1 / (1 + depthSlope * depthSlope)
  placed.secant = Math.sqrt(1 + yawSlope * yawSlope)
  placed.yawCosine = 1 / placed.secant
  placed.yawSine = yawSlope / placed.secant
  const axisVMm = bed.projectionMm - bed.barDistanceMm * placed.tiltCosine
  placed.axisNMm = bed.seatOffsetMm + bed.barDistanceMm * placed.tiltSine
  placed.fixedMm = bed.pivotVMm - axisVMm - bed.pivotVMm * placed.yawCosine + bed.pivotUMm * placed.yawSine
  placed.acrossMm = pose.traverseMm + bed.pivotUMm - bed.pivotUMm * placed.yawCosine - bed.pivotVMm * placed.yawSine
}

/**
 * Share of a node's column that the wheel covers, 0 to 1. Continuous in the pose: with a hard cut-off the moment would
 * jump and no balance exist.
 */
export const coverage = (bed: Bed, placed: Placed, i: number, vMm: number): number => {
  const shift = placed.acrossMm + vMm * placed.yawSine
  const left = shift + (bed.columnEdgesMm[i] as number) * placed.yawCosine
  const right = shift + (bed.columnEdgesMm[i + 1] as number) * placed.yawCosine
  const half = bed.wheelHalfWidthMm
  if (left >= -half && right <= half) return 1
  const covered = Math.min(right, half) - Math.max(left, -half)
  return covered <= 0 ? 0 : covered / (right - left)
}

/** Growth of a node's coverage with yawSlope: a column that the rim runs through gains on one side what it loses on the other. */
const coveragePerYaw = (bed: Bed, placed: Placed, i: number, vMm: number): number => {
  const { yawSine, yawCosine, acrossMm } = placed
  const left = acrossMm + vMm * yawSine + (bed.columnEdgesMm[i] as number) * yawCosine
  const right = acrossMm + vMm * yawSine + (bed.columnEdgesMm[i + 1] as number) * yawCosine
  const drift =
    ((vMm - bed.pivotVMm) * yawCosine - ((bed.uMm[i] as number) - bed.pivotUMm) * yawSine) * yawCosine * yawCosine
  const enters = left < -bed.wheelHalfWidthMm ? drift : 0
  const leaves = right > bed.wheelHalfWidthMm ? drift : 0
  return (enters - leaves) / (right - left)
}

/**
 * How far each column is known to stand off the wheel, so that columns out of reach are passed over. Exact: a pose may
 * move a column by no more than `creep` says, and wear only takes it further away; the sums are the same to the last bit.
 */
export interface Clearance {
  /** At least this far from touching, per column; 0 where it may touch. */
  readonly columnMm: Float64Array
  /** Greatest |v| in the field. */
  mostVMm: number
  /** The pose that the clearances were last brought up to. */
  fixedMm: number
  yawSine: number
  yawCosine: number
  axisNMm: number
}

/** Nothing known yet: every column may touch. */
export const newClearance = (vMm: Float64Array, acrossCount: number): Clearance => ({
  columnMm: new Float64Array(acrossCount),
  mostVMm: vMm.reduce((most, v) => Math.max(most, Math.abs(v)), 0),
  fixedMm: 0,
  yawSine: 0,
  yawCosine: 1,
  axisNMm: 0,
})

/** Brings the clearances to a new pose: what every column may have come nearer is taken off. */
const creep = (bed: Bed, placed: Placed, clearance: Clearance): void => {
  const alikeMm =
    Math.abs(placed.fixedMm - clearance.fixedMm) +
    Math.abs(placed.axisNMm - clearance.axisNMm) +
    Math.abs(placed.yawCosine - clearance.yawCosine) * clearance.mostVMm
  const turn = Math.abs(placed.yawSine - clearance.yawSine)
  const { columnMm } = clearance
  for (let i = 0; i < bed.acrossCount; i++)
    columnMm[i] = (columnMm[i] as number) - alikeMm - turn * Math.abs(bed.uMm[i] as number)
  clearance.fixedMm = placed.fixedMm
  clearance.axisNMm = placed.axisNMm
  clearance.yawSine = placed.yawSine
  clearance.yawCosine = placed.yawCosine
}

/** A hair (mm) kept back from each clearance for the rounding of distances of some hundred millimetres. */
const ROUNDING_MM = 1e-10

/**
 * Presses the wheel into the field at a pose and fills the sums. With h = n - axis, d the plan distance and rho = hypot(d, h):
 * penetration = R - rho, patch of surface = du dn rho / (d cos yaw); derivatives follow by the chain rule.
 *
 * @param stiffness of the bed, N/mm^3
 * @param loadPlaceMm where the moments are taken about
 */
export const press = (
  bed: Bed,
  vMm: Float64Array,
  placed: Placed,
  clearance: Clearance,
  stiffness: number,
  loadPlaceMm: number,
  sums: Sums,
): void => {
  creep(bed, placed, clearance)
  const { acrossCount, throughCount, uMm, nMm, columnEdgesMm, rowHeightsMm, wheelRadiusMm: R, barDistanceMm: C } = bed
  const { yawSine, yawCosine, secant, axisNMm, fixedMm } = placed
  const dPerTilt = -C * placed.tiltSine
  const hPerTilt = -C * placed.tiltCosine
  let force = 0
  let forcePerDepth = 0
  let forcePerYaw = 0
  let moment = 0
  let momentPerDepth = 0
  let momentPerYaw = 0
  let deepestMm = 0
  for (let i = 0; i < acrossCount; i++) {
    if ((clearance.columnMm[i] as number) > 0) continue
    const u = uMm[i] as number
    const columnD = fixedMm - u * yawSine
    const widthMm = (columnEdgesMm[i + 1] as number) - (columnEdgesMm[i] as number)
    const yawArm = u - bed.pivotUMm
    let columnForce = 0
    let columnPerDepth = 0
    let columnPerYaw = 0
    let nearestSquare = Number.POSITIVE_INFINITY
    for (let j = 0, at = i * throughCount; j < throughCount; j++, at++) {
      const v = vMm[at] as number
      const d = columnD + v * yawCosine
      const h = (nMm[j] as number) - axisNMm
      const rhoSquare = d * d + h * h
      if (rhoSquare < nearestSquare) nearestSquare = rhoSquare
      if (rhoSquare >= R * R) continue
      const covered = coverage(bed, placed, i, v)
      if (covered === 0) continue
      const rho = Math.sqrt(rhoSquare)
      const depth = R - rho
      if (depth > deepestMm) deepestMm = depth
      const scale = (stiffness * covered * widthMm * (rowHeightsMm[j] as number) * secant) / d
      const rhoPerTilt = (d * dPerTilt + h * hPerTilt) / rho
      const dPerYaw = (-(v - bed.pivotVMm) * yawSine - yawArm * yawCosine) * yawCosine * yawCosine
      const rhoPerYaw = (d * dPerYaw) / rho
      const nodeForce = scale * depth * rho
      columnForce += nodeForce
      columnPerDepth += scale * (depth - rho) * rhoPerTilt - (nodeForce * dPerTilt) / d
      columnPerYaw += scale * (depth - rho) * rhoPerYaw - (nodeForce * dPerYaw) / d + nodeForce * yawSine * yawCosine
      if (covered < 1) columnPerYaw += (nodeForce / covered) * coveragePerYaw(bed, placed, i, v)
    }
    clearance.columnMm[i] = nearestSquare > R * R ? Math.sqrt(nearestSquare) - R - ROUNDING_MM : 0
    const arm = u - loadPlaceMm
    force += columnForce
    forcePerDepth += columnPerDepth
    forcePerYaw += columnPerYaw
    moment += columnForce * arm
    momentPerDepth += columnPerDepth * arm
    momentPerYaw += columnPerYaw * arm
  }
  sums.force = force
  sums.forcePerDepth = forcePerDepth * placed.tiltPerDepth
  sums.forcePerYaw = forcePerYaw
  sums.moment = moment
  sums.momentPerDepth = momentPerDepth * placed.tiltPerDepth
  sums.momentPerYaw = momentPerYaw
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
export const nearestNode = (bed: Bed, vMm: Float64Array, placed: Placed): Nearest | null => {
  const { yawSine, yawCosine, axisNMm, fixedMm, tiltSine, tiltCosine } = placed
  let square = Number.POSITIVE_INFINITY
  let term = 0
  for (let at = 0; at < vMm.length; at++) {
    const i = Math.floor(at / bed.throughCount)
    const v = vMm[at] as number
    const d = fixedMm - (bed.uMm[i] as number) * yawSine + v * yawCosine
    const h = (bed.nMm[at % bed.throughCount] as number) - axisNMm
    if (d * d + h * h >= square || coverage(bed, placed, i, v) === 0) continue
    square = d * d + h * h
    term = -bed.barDistanceMm * (d * tiltSine + h * tiltCosine)
  }
  if (!Number.isFinite(square)) return null
  const rho = Math.sqrt(square)
  return { depthMm: bed.wheelRadiusMm - rho, perDepth: (-term / rho) * placed.tiltPerDepth }
}
