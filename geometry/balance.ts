import { type Bed, newPlaced, newSums, type Placed, type Pose, place, press, type Sums } from './contact.ts'
import { BALANCE_PASSES, FORCE_TOLERANCE, MOMENT_TOLERANCE, YAW_BRACKET } from './tolerances.ts'

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
  /** Evaluations left before the balance is called lost. */
  passesLeft: number
}

export const newScales = (): Scales => ({ placed: newPlaced(), sums: newSums(), passesLeft: 0 })

const weigh = (bed: Bed, vMm: Float64Array, pose: Pose, push: Push, scales: Scales): void => {
  scales.passesLeft--
  place(bed, pose, scales.placed)
  press(bed, vMm, scales.placed, push.stiffnessNPerMm3, push.loadPlaceMm, scales.sums)
}

/** Penetration a flat, fully covered bevel would have under the load: the scale of a first step into the wheel. */
const softDepthMm = (bed: Bed, push: Push): number =>
  push.loadN / (push.stiffnessNPerMm3 * (bed.uMm.at(-1) as number) * 2 * (bed.nMm.at(-1) as number))

/**
 * Finds the tilt at which the bed carries the load, yaw held. The force grows with the tilt and is convex in it, so Newton
 * steps inside a bracket always arrive; while nothing touches, the blade is lowered by the gap that is left.
 * @returns false where no tilt was found; then the pose means nothing
 */
const balanceTilt = (bed: Bed, vMm: Float64Array, pose: Pose, push: Push, scales: Scales): boolean => {
  const { sums } = scales
  const soft = softDepthMm(bed, push)
  let low = Number.NEGATIVE_INFINITY
  let high = Number.POSITIVE_INFINITY
  while (scales.passesLeft > 0) {
    weigh(bed, vMm, pose, push, scales)
    const excess = sums.force - push.loadN
    if (Math.abs(excess) <= FORCE_TOLERANCE * push.loadN) return true
    if (!(sums.deepestPerDepth > 0)) return false
    if (excess > 0) high = pose.depthSlope
    else low = pose.depthSlope
    if (Number.isFinite(high) && high - low <= Number.EPSILON * Math.abs(high)) return true
    const furthest = (2 * Math.max(sums.deepestMm, 0) + 4 * soft) / sums.deepestPerDepth
    const step =
      sums.force > 0 ? Math.min(-excess / sums.forcePerDepth, furthest) : (soft - sums.deepestMm) / sums.deepestPerDepth
    const next = pose.depthSlope + step
    pose.depthSlope = next > low && next < high ? next : (low + high) / 2
  }
  return false
}

/** Growth of the moment with the yaw when the tilt follows so that the force stays. */
const momentSlope = ({ forcePerDepth, forcePerYaw, momentPerDepth, momentPerYaw }: Sums): number =>
  momentPerYaw - (momentPerDepth * forcePerYaw) / forcePerDepth

/** Moves the yaw and lets the tilt follow to first order, then balances it. */
const yawTo = (bed: Bed, vMm: Float64Array, pose: Pose, push: Push, scales: Scales, yawSlope: number): boolean => {
  const { forcePerDepth, forcePerYaw } = scales.sums
  pose.depthSlope -= (forcePerYaw / forcePerDepth) * (yawSlope - pose.yawSlope)
  pose.yawSlope = yawSlope
  return balanceTilt(bed, vMm, pose, push, scales)
}

/** Closes in on the root between a yaw whose moment pulls right (low) and one whose moment pulls left (high). */
const closeIn = (
  bed: Bed,
  vMm: Float64Array,
  pose: Pose,
  push: Push,
  scales: Scales,
  from: number,
  to: number,
): boolean => {
  const { sums } = scales
  const enough = MOMENT_TOLERANCE * push.loadN * (bed.uMm.at(-1) as number)
  let low = from
  let high = to
  while (Math.abs(sums.moment) > enough && high - low > YAW_BRACKET) {
    if (sums.moment < 0) low = pose.yawSlope
    else high = pose.yawSlope
    const next = pose.yawSlope - sums.moment / momentSlope(sums)
    if (!yawTo(bed, vMm, pose, push, scales, next > low && next < high ? next : (low + high) / 2)) return false
  }
  return true
}

/** Shortest first move of the search, as a slope: a thousandth of a degree. */
const SHORTEST_MOVE = 1.7e-5

/**
 * Balances force and moment: tilt within yaw. The yaw goes from where it stands the way the moment pulls it, in growing
 * moves, until the moment turns (the root nearest on that way, closed in on) or a stop is met, which then carries the rest.
 * A pose at a stop leaves it by the same rule as soon as the moment pulls away from it.
 * @returns the stop that bears, or null where there is no balance
 */
export const balance = (bed: Bed, vMm: Float64Array, pose: Pose, push: Push, scales: Scales): Bearing | null => {
  const { sums } = scales
  scales.passesLeft = BALANCE_PASSES
  pose.yawSlope = Math.min(Math.max(pose.yawSlope, -push.yawSlopeLeft), push.yawSlopeRight)
  if (!balanceTilt(bed, vMm, pose, push, scales)) return null
  if (push.yawSlopeLeft === 0 && push.yawSlopeRight === 0) return 'none'
  const enough = MOMENT_TOLERANCE * push.loadN * (bed.uMm.at(-1) as number)
  if (Math.abs(sums.moment) <= enough) return 'none'
  const rightward = sums.moment < 0
  const stop = rightward ? push.yawSlopeRight : -push.yawSlopeLeft
  const bearing: Bearing = rightward ? 'right' : 'left'
  let move = Math.max(SHORTEST_MOVE, Math.abs(sums.moment / momentSlope(sums)))
  while (pose.yawSlope !== stop) {
    const before = pose.yawSlope
    const next = rightward ? Math.min(before + move, stop) : Math.max(before - move, stop)
    if (!yawTo(bed, vMm, pose, push, scales, next)) return null
    if (rightward ? sums.moment >= 0 : sums.moment <= 0) {
      const found = rightward
        ? closeIn(bed, vMm, pose, push, scales, before, next)
        : closeIn(bed, vMm, pose, push, scales, next, before)
      return found ? 'none' : null
    }
    if (Math.abs(sums.moment) <= enough) return 'none'
    move *= 2
  }
  return bearing
}
