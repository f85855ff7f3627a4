import {
  type Bed,
  type Clearance,
  nearestNode,
  newClearance,
  newPlaced,
  newSums,
  type Placed,
  type Pose,
  place,
  press,
  type Sums,
} from './contact.ts'
import { BALANCE_PASSES, FORCE_TOLERANCE, MOMENT_TOLERANCE, TILT_GRAIN, YAW_BRACKET } from './tolerances.ts'

/** Which stop carries moment. */
export type Bearing = 'none' | 'left' | 'right'

/** What is pressed on the blade at one moment. */
export interface Push {
  readonly loadN: number
  readonly loadPlaceMm: number
  readonly stiffnessNPerMm3: number
  readonly yawSlopeLeft: number
  readonly yawSlopeRight: number
}

/** Working memory of a balance; one for each grind, so that a step allocates nothing. */
export interface Scales {
  readonly placed: Placed
  readonly sums: Sums
  readonly clearance: Clearance
  /** Evaluations left before the balance is called lost. */
  passesLeft: number
}

export const newScales = (vMm: Float64Array, acrossCount: number): Scales => ({
  placed: newPlaced(),
  sums: newSums(),
  clearance: newClearance(vMm, acrossCount),
  passesLeft: 0,
})

/** One blade on its bed with its pose, its push and its scales: what every function here works on. */
interface Weighing {
  readonly bed: Bed
  readonly vMm: Float64Array
  readonly pose: Pose
  readonly push: Push
  readonly scales: Scales
}

const weigh = ({ bed, vMm, pose, push, scales }: Weighing): void => {
  scales.passesLeft--
  place(bed, pose, scales.placed)
  press(bed, vMm, scales.placed, scales.clearance, push.stiffnessNPerMm3, push.loadPlaceMm, scales.sums)
}

/** Penetration a flat, fully covered bevel would have under the load: the scale of a first step into the wheel. */
const softDepthMm = ({ bed, push }: Weighing): number =>
  push.loadN / (push.stiffnessNPerMm3 * (bed.uMm.at(-1) as number) * 2 * (bed.nMm.at(-1) as number))

/** Met as closely as asked, or as the grain of the tilt lets it: on a stiff bed one grain is many parts of the load. */
const forceMet = ({ scales: { sums }, push }: Weighing): boolean =>
  Math.abs(sums.force - push.loadN) <= FORCE_TOLERANCE * push.loadN + TILT_GRAIN * sums.forcePerDepth

const momentMet = ({ scales: { sums }, push, bed }: Weighing): boolean =>
  Math.abs(sums.moment) <=
  (MOMENT_TOLERANCE * push.loadN + TILT_GRAIN * sums.forcePerDepth) * (bed.uMm.at(-1) as number)

/** Newton's step in depthSlope for the force, no further than a few times the depth there is; lowers a blade that hangs free. */
const depthStep = (weighing: Weighing): number | null => {
  const { sums, placed } = weighing.scales
  const soft = softDepthMm(weighing)
  if (sums.force === 0) {
    const nearest = nearestNode(weighing.bed, weighing.vMm, placed)
    return nearest === null || nearest.perDepth <= 0 ? null : (soft - nearest.depthMm) / nearest.perDepth
  }
  if (!(sums.forcePerDepth > 0)) return null
  const furthest = (2 * sums.deepestMm + 4 * soft) / weighing.bed.barDistanceMm
  return Math.min((weighing.push.loadN - sums.force) / sums.forcePerDepth, furthest)
}

/**
 * Finds the tilt at which the bed carries the load, yaw held. The force grows with the tilt and is convex in it, so Newton
 * steps inside a bracket always arrive.
 * @returns false where no tilt was found; then the pose means nothing
 */
const balanceTilt = (weighing: Weighing): boolean => {
  const { pose, push, scales } = weighing
  let low = Number.NEGATIVE_INFINITY
  let high = Number.POSITIVE_INFINITY
  while (scales.passesLeft > 0) {
    weigh(weighing)
    if (forceMet(weighing)) return true
    if (scales.sums.force > push.loadN) high = pose.depthSlope
    else low = pose.depthSlope
    if (Number.isFinite(high) && high - low <= Number.EPSILON * Math.abs(high)) return true
    const step = depthStep(weighing)
    if (step === null) return false
    const next = pose.depthSlope + step
    pose.depthSlope = next > low && next < high ? next : (low + high) / 2
  }
  return false
}

/** Growth of the moment with the yaw when the tilt follows so that the force stays. */
const momentSlope = ({ forcePerDepth, forcePerYaw, momentPerDepth, momentPerYaw }: Sums): number =>
  momentPerYaw - (momentPerDepth * forcePerYaw) / forcePerDepth

/** Moves the yaw and lets the tilt follow to first order, then balances it. */
const yawTo = (weighing: Weighing, yawSlope: number): boolean => {
  const { pose, scales } = weighing
  pose.depthSlope -= (scales.sums.forcePerYaw / scales.sums.forcePerDepth) * (yawSlope - pose.yawSlope)
  pose.yawSlope = yawSlope
  return balanceTilt(weighing)
}

/**
 * Closes in on the root between a yaw whose moment pulls right (low) and one whose moment pulls left (high): Newton's step
 * where it stays inside and is shorter than half the one before, halving where it is not (columns that come and go bend the curve).
 */
const closeIn = (weighing: Weighing, from: number, to: number): boolean => {
  const { pose, scales } = weighing
  let low = from
  let high = to
  let before = high - low
  while (!momentMet(weighing) && high - low > YAW_BRACKET) {
    if (scales.sums.moment < 0) low = pose.yawSlope
    else high = pose.yawSlope
    const newton = pose.yawSlope - scales.sums.moment / momentSlope(scales.sums)
    const quick = newton > low && newton < high && Math.abs(newton - pose.yawSlope) < before / 2
    const next = quick ? newton : (low + high) / 2
    before = Math.abs(next - pose.yawSlope)
    if (!yawTo(weighing, next)) return false
  }
  return true
}

/** Shortest first move of the search, as a slope: a thousandth of a degree. */
const SHORTEST_MOVE = 1.7e-5

/**
 * Tilt within yaw, for any field. The yaw goes from where it stands the way the moment pulls it, in growing moves, until
 * the moment turns (the root nearest on that way, closed in on) or a stop is met, which then carries the rest. A pose at
 * a stop leaves it by the same rule as soon as the moment pulls away from it.
 */
const balanceNested = (weighing: Weighing): Bearing | null => {
  const { pose, push, scales } = weighing
  const { sums } = scales
  if (!balanceTilt(weighing)) return null
  if (isHeld(push) || momentMet(weighing)) return 'none'
  const rightward = sums.moment < 0
  const stop = rightward ? push.yawSlopeRight : -push.yawSlopeLeft
  let move = Math.max(SHORTEST_MOVE, Math.abs(sums.moment / momentSlope(sums)))
  while (pose.yawSlope !== stop) {
    const before = pose.yawSlope
    const next = rightward ? Math.min(before + move, stop) : Math.max(before - move, stop)
    if (!yawTo(weighing, next)) return null
    if (momentMet(weighing)) return 'none'
    if (rightward ? sums.moment > 0 : sums.moment < 0)
      return closeIn(weighing, Math.min(before, next), Math.max(before, next)) ? 'none' : null
    move *= 2
  }
  return rightward ? 'right' : 'left'
}

const isHeld = ({ yawSlopeLeft, yawSlopeRight }: Push): boolean => yawSlopeLeft === 0 && yawSlopeRight === 0

/** The stop at which the pose stands and into which the moment pulls it. */
const bearingAt = ({ pose, push, scales }: Weighing): Bearing => {
  if (isHeld(push)) return 'none'
  if (pose.yawSlope === push.yawSlopeRight && scales.sums.moment < 0) return 'right'
  if (pose.yawSlope === -push.yawSlopeLeft && scales.sums.moment > 0) return 'left'
  return 'none'
}

/** Passes of the direct way before the nested one takes over; an ordinary step needs three to six. */
const DIRECT_PASSES = 14

/**
 * Tilt and yaw at once by Newton's method, yaw clipped to the stops: the ordinary step, some three times quicker than
 * nesting. Only while the moment grows with the yaw at every pass, where there is but one root on the way; a field that
 * twists it otherwise, or one that hangs free, is left to the nested search.
 * @returns undefined where it gives up
 */
const balanceDirect = (weighing: Weighing): Bearing | undefined => {
  const { pose, push, scales } = weighing
  const { sums } = scales
  for (let pass = 0; pass < DIRECT_PASSES; pass++) {
    weigh(weighing)
    const bearing = bearingAt(weighing)
    if (forceMet(weighing) && (bearing !== 'none' || isHeld(push) || momentMet(weighing))) return bearing
    const slope = momentSlope(sums)
    if (!(sums.forcePerDepth > 0) || !(isHeld(push) || slope > 0)) return undefined
    const lack = push.loadN - sums.force
    const turn = isHeld(push) ? 0 : -(sums.moment + (sums.momentPerDepth * lack) / sums.forcePerDepth) / slope
    const yawSlope = Math.min(Math.max(pose.yawSlope + turn, -push.yawSlopeLeft), push.yawSlopeRight)
    pose.depthSlope += (lack - sums.forcePerYaw * (yawSlope - pose.yawSlope)) / sums.forcePerDepth
    pose.yawSlope = yawSlope
  }
  return undefined
}

/**
 * Balances force and moment of a blade pressed on the wheel, in place, from the pose it has.
 * @returns the stop that bears, or null where there is no balance
 */
export const balance = (bed: Bed, vMm: Float64Array, pose: Pose, push: Push, scales: Scales): Bearing | null => {
  const weighing = { bed, vMm, pose, push, scales }
  pose.yawSlope = Math.min(Math.max(pose.yawSlope, -push.yawSlopeLeft), push.yawSlopeRight)
  const { depthSlope, yawSlope } = pose
  scales.passesLeft = BALANCE_PASSES
  const bearing = balanceDirect(weighing)
  if (bearing !== undefined) return bearing
  pose.depthSlope = depthSlope
  pose.yawSlope = yawSlope
  return balanceNested(weighing)
}
