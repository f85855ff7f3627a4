import { newClearance } from './clearance.ts'
import { newColumn } from './column.ts'
import { nearestNode, newSums, type Pressing, press, type Sums } from './contact.ts'
import type { Guess } from './guess.ts'
import { type Bed, newPlaced, type Placed, type Pose, place } from './pose.ts'
import { BALANCE_PASSES, FORCE_TOLERANCE, MOMENT_TOLERANCE, TILT_GRAIN, TURN_BRACKET } from './tolerances.ts'

/** What carries the moment besides the wheel, or at a pin the load: a stop of the fixture, the pin it swings about. */
export type Bearing = 'none' | 'left' | 'right' | 'pin'

/** What is pressed on the blade at one moment. */
export interface Push {
  loadN: number
  loadPlaceMm: number
  stiffnessNPerMm3: number
  /** Stops of the fixture's own turn, both >= 0. */
  slopeLeft: number
  slopeRight: number
  /** The turn that the hand gives about a pin, which also holds the blade from going deeper; null: the wheel turns the blade. */
  handSlope: number | null
}

/** Nothing pressed yet. */
const newPush = (): Push => ({
  loadN: 0,
  loadPlaceMm: 0,
  stiffnessNPerMm3: 0,
  slopeLeft: 0,
  slopeRight: 0,
  handSlope: null,
})

/** Working memory of a balance; one for each grind, so that a step allocates nothing. */
export interface Scales extends Pressing {
  readonly placed: Placed
  /** Evaluations left before the balance is called lost. */
  passesLeft: number
}

const newScales = (vMm: Float64Array, acrossCount: number): Scales => ({
  placed: newPlaced(),
  sums: newSums(),
  clearance: newClearance(vMm, acrossCount),
  patchMm: new Float64Array(vMm.length),
  column: newColumn(),
  passesLeft: 0,
})

/** One blade on its bed with its pose, its push and its scales: what every function here works on, one for each grind. */
export interface Weighing {
  readonly bed: Bed
  readonly vMm: Float64Array
  readonly pose: Pose
  readonly push: Push
  readonly scales: Scales
}

export const newWeighing = (bed: Bed, vMm: Float64Array): Weighing => ({
  bed,
  vMm,
  pose: { depthSlope: 0, turnSlope: 0, traverseMm: 0, rollSlope: 0 },
  push: newPush(),
  scales: newScales(vMm, bed.acrossCount),
})

const weigh = ({ bed, vMm, pose, push, scales }: Weighing): void => {
  scales.passesLeft--
  place(bed, pose, scales.placed)
  press(bed, vMm, scales.placed, scales, push.stiffnessNPerMm3, push.loadPlaceMm)
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

/** Newton's step in depthSlope for the force, no further than a few times the depth there is; null where it leads nowhere. */
const depthStep = (weighing: Weighing): number | null => {
  const { sums } = weighing.scales
  if (sums.past || !(sums.force > 0) || !(sums.forcePerDepth > 0)) return null
  const furthest = (2 * sums.force) / sums.forcePerDepth + (4 * softDepthMm(weighing)) / weighing.bed.barDistanceMm
  return Math.min((weighing.push.loadN - sums.force) / sums.forcePerDepth, furthest)
}

/** Too deep: the bed pushes back harder than the load, or the blade has gone past the wheel. */
const isTooDeep = ({ scales: { sums }, push }: Weighing): boolean => sums.past || sums.force > push.loadN

/**
 * Closes in on the tilt at which the bed carries the load, between one known to be too shallow and one known to be too deep:
 * the force grows with the tilt and is convex in it, so Newton steps inside the bracket arrive; where they do not lead
 * inside, it is halved.
 * @returns false where the bracket closes, or stays open and leads nowhere, without a balance
 */
const closeTilt = (weighing: Weighing, from: number, to: number): boolean => {
  const { pose, scales } = weighing
  let low = from
  let high = to
  while (scales.passesLeft > 0) {
    if (!scales.sums.past && forceMet(weighing)) return true
    if (isTooDeep(weighing)) high = pose.depthSlope
    else low = pose.depthSlope
    const bracketed = Number.isFinite(low) && Number.isFinite(high)
    if (bracketed && high - low <= TILT_GRAIN) return false
    const step = depthStep(weighing)
    if (step === null && !bracketed) return false
    const next = pose.depthSlope + (step ?? 0)
    pose.depthSlope = step !== null && next > low && next < high ? next : (low + high) / 2
    weigh(weighing)
  }
  return false
}

/** Furthest that a blade is lifted to get clear of the wheel, as a slope: past a right angle nothing stands on a wheel. */
const HIGHEST_LIFT = 8

/** Lifts the blade, further and further, until nothing touches. */
const liftClear = (weighing: Weighing): boolean => {
  const { pose, scales, bed } = weighing
  const from = pose.depthSlope
  let lift = softDepthMm(weighing) / bed.barDistanceMm
  while (scales.sums.past || scales.sums.force !== 0) {
    if (lift > HIGHEST_LIFT || scales.passesLeft <= 0) return false
    pose.depthSlope = from - lift
    lift *= 2
    weigh(weighing)
  }
  return true
}

/** Shortest way in, as a share of the depth that the load presses a flat bevel in. */
const SHORTEST_WAY = 0.1

/** Lowers a blade that hangs free until the bed carries the load; false where it slips past the wheel before that. */
const lowerOnto = (weighing: Weighing): boolean => {
  const { pose, scales, bed, push } = weighing
  const soft = softDepthMm(weighing)
  let before = 0
  let shallow = pose.depthSlope
  let way = (SHORTEST_WAY * soft) / bed.barDistanceMm
  while (scales.passesLeft > 0 && scales.sums.force < push.loadN) {
    shallow = pose.depthSlope
    before = scales.sums.force
    if (before === 0) {
      const nearest = nearestNode(bed, weighing.vMm, scales.placed)
      if (nearest === null || nearest.perDepth <= 0) return false
      pose.depthSlope += Math.max(-nearest.depthMm / nearest.perDepth, way)
    } else {
      pose.depthSlope += way
      way *= 2
    }
    weigh(weighing)
    if (scales.sums.past || scales.sums.force < before) break
  }
  return closeTilt(weighing, shallow, pose.depthSlope)
}

/**
 * Finds the tilt at which the bed carries the load, turn held: from where it stands, or, where that leads nowhere, lifted
 * clear and lowered again.
 * @returns false where no tilt was found; then the pose means nothing
 */
const balanceTilt = (weighing: Weighing): boolean => {
  weigh(weighing)
  if (closeTilt(weighing, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)) return true
  return liftClear(weighing) && lowerOnto(weighing)
}

/** Growth of the moment with the turn when the tilt follows so that the force stays. */
const momentSlope = ({ forcePerDepth, forcePerTurn, momentPerDepth, momentPerTurn }: Sums): number =>
  momentPerTurn - (momentPerDepth * forcePerTurn) / forcePerDepth

/** Moves the turn and lets the tilt follow to first order, then balances it. */
const turnTo = (weighing: Weighing, turnSlope: number): boolean => {
  const { pose, scales } = weighing
  pose.depthSlope -= (scales.sums.forcePerTurn / scales.sums.forcePerDepth) * (turnSlope - pose.turnSlope)
  pose.turnSlope = turnSlope
  return balanceTilt(weighing)
}

/**
 * Closes in on the root between a turn whose moment pulls right (low) and one whose moment pulls left (high): Newton's step
 * where it stays inside and is shorter than half the one before, halving where it is not (columns that come and go bend the curve).
 */
const closeIn = (weighing: Weighing, from: number, to: number): boolean => {
  const { pose, scales } = weighing
  let low = from
  let high = to
  let before = high - low
  while (!momentMet(weighing) && high - low > TURN_BRACKET) {
    if (scales.sums.moment < 0) low = pose.turnSlope
    else high = pose.turnSlope
    const newton = pose.turnSlope - scales.sums.moment / momentSlope(scales.sums)
    const quick = newton > low && newton < high && Math.abs(newton - pose.turnSlope) < before / 2
    const next = quick ? newton : (low + high) / 2
    before = Math.abs(next - pose.turnSlope)
    if (!turnTo(weighing, next)) return false
  }
  return true
}

/** Shortest first move of the search, as a slope: a thousandth of a degree. */
const SHORTEST_MOVE = 1.7e-5
/** Longest move, as a share of the way between the stops: two roots nearer together than this may be taken for none. */
const LONGEST_SHARE = 1 / 32

/**
 * Tilt within turn, for any field. The turn goes from where it stands the way the moment pulls it, in growing moves, until
 * the moment changes sign (the root nearest on that way, closed in on) or a stop is met, which then carries the rest. A
 * pose at a stop leaves it by the same rule as soon as the moment pulls away from it.
 */
const balanceNested = (weighing: Weighing): Bearing | null => {
  const { pose, push, scales } = weighing
  const { sums } = scales
  if (!balanceTilt(weighing)) return null
  if (isHeld(push) || momentMet(weighing)) return 'none'
  const rightward = sums.moment < 0
  const stop = rightward ? push.slopeRight : -push.slopeLeft
  const longest = (push.slopeLeft + push.slopeRight) * LONGEST_SHARE
  let move = Math.max(SHORTEST_MOVE, Math.abs(sums.moment / momentSlope(sums)))
  while (pose.turnSlope !== stop) {
    const before = pose.turnSlope
    move = Math.min(move, longest)
    const next = rightward ? Math.min(before + move, stop) : Math.max(before - move, stop)
    if (!turnTo(weighing, next)) return null
    if (momentMet(weighing)) return 'none'
    if (rightward ? sums.moment > 0 : sums.moment < 0)
      return closeIn(weighing, Math.min(before, next), Math.max(before, next)) ? 'none' : null
    move *= 2
  }
  return rightward ? 'right' : 'left'
}

/** A turn kept between the stops. */
const clipped = ({ slopeLeft, slopeRight }: Push, slope: number): number =>
  Math.min(Math.max(slope, -slopeLeft), slopeRight)

const isHeld = ({ slopeLeft, slopeRight }: Push): boolean => slopeLeft === 0 && slopeRight === 0

/** The stop at which the pose stands and into which the moment pulls it. */
const bearingAt = ({ pose, push, scales }: Weighing): Bearing => {
  if (isHeld(push)) return 'none'
  if (pose.turnSlope === push.slopeRight && scales.sums.moment < 0) return 'right'
  if (pose.turnSlope === -push.slopeLeft && scales.sums.moment > 0) return 'left'
  return 'none'
}

/** Passes of the direct way before the nested one takes over; an ordinary step needs three to six. */
const DIRECT_PASSES = 14

/**
 * Tilt and turn at once by Newton's method, turn clipped to the stops: the ordinary step, some three times quicker than
 * nesting. Only while the moment grows with the turn at every pass, where there is but one root on the way; a field that
 * twists it otherwise, or one that hangs free, is left to the nested search.
 * @returns undefined where it gives up
 */
const balanceDirect = (weighing: Weighing): Bearing | undefined => {
  const { pose, push, scales } = weighing
  const { sums } = scales
  for (let pass = 0; pass < DIRECT_PASSES; pass++) {
    weigh(weighing)
    const bearing = bearingAt(weighing)
    if (!sums.past && forceMet(weighing) && (bearing !== 'none' || isHeld(push) || momentMet(weighing))) return bearing
    const slope = momentSlope(sums)
    if (sums.past || !(sums.forcePerDepth > 0) || !(isHeld(push) || slope > 0)) return undefined
    const lack = push.loadN - sums.force
    const turn = isHeld(push) ? 0 : -(sums.moment + (sums.momentPerDepth * lack) / sums.forcePerDepth) / slope
    const turnSlope = clipped(push, pose.turnSlope + turn)
    pose.depthSlope += (lack - sums.forcePerTurn * (turnSlope - pose.turnSlope)) / sums.forcePerDepth
    pose.turnSlope = turnSlope
  }
  return undefined
}

/**
 * A blade swung about a pin by hand: the turn is given, the wheel carries the load until the pin does. The set-up tilt is
 * the deepest that the pin lets it go.
 */
const balanceAtPin = (weighing: Weighing, handSlope: number): Bearing | null => {
  const { pose } = weighing
  const { depthSlope } = pose
  pose.turnSlope = handSlope
  pose.depthSlope = 0
  weigh(weighing)
  if (!isTooDeep(weighing)) return 'pin'
  pose.depthSlope = depthSlope
  return balanceTilt(weighing) ? 'none' : null
}

/**
 * Balances force and moment of a blade pressed on the wheel, in place. Starts at a guess; where the direct way gives up,
 * the nested one starts at the last pose itself, so that of several roots the nearest to it is found.
 * @param weighing its pose, the last one, becomes the new one
 * @returns what bears besides the wheel, or null where there is no balance
 */
export const balance = (weighing: Weighing, guess: Guess): Bearing | null => {
  const { pose, push, scales } = weighing
  const { depthSlope, turnSlope } = pose
  scales.passesLeft = BALANCE_PASSES
  if (push.handSlope !== null) return balanceAtPin(weighing, push.handSlope)
  pose.depthSlope = guess.depthSlope
  pose.turnSlope = clipped(push, guess.turnSlope)
  const bearing = balanceDirect(weighing)
  if (bearing !== undefined) return bearing
  pose.depthSlope = depthSlope
  pose.turnSlope = clipped(push, turnSlope)
  return balanceNested(weighing)
}
