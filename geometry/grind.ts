import { type Bearing, balance, newWeighing, type Weighing } from './balance.ts'
import { forget, newClearance } from './clearance.ts'
import { acrossMm } from './edge.ts'
import { type Freedom, freedomOf } from './freedom.ts'
import { isGroundAway, type Reach, reachOf } from './groundAway.ts'
import { copyGuesses, type Guesses, guessPose, newGuesses, notePose } from './guess.ts'
import { holdOf } from './hold.ts'
import { presentBevelDeg } from './hollow.ts'
import type { Job } from './job.ts'
import { handSlopeAt, loadPlaceMm, type Motion, pathAt, periodOf, settingAt, traverseAtMm } from './motion.ts'
import type { Bed, Pose } from './pose.ts'
import { failed, ok, problem, type Result } from './result.ts'
import { rimOf } from './rim.ts'
import { type SetUp, setUpOf } from './setUp.ts'
import { atan, atan2, cos, sin, tan } from './trigonometry.ts'
import { radFromDeg } from './units.ts'
import { effectiveStiffness, readPressure, wear, wearWheel } from './wear.ts'

/** A grind alive: the blade as it is now and where it stands. `advance` moves it in place. */
export interface GrindState extends Bed {
  /** v at which material begins, row-major as `Bed` draws it. */
  readonly vMm: Float64Array
  /** The same before the first step. */
  readonly vStartMm: Float64Array
  readonly weighing: Weighing
  readonly guesses: Guesses
  readonly reach: Reach
  /** Which way the fixture turns: yaw about a pivot square to the back, or roll about an axis along the blade. */
  readonly turns: Freedom['turns']
  /** Steps done. */
  step: number
  /** Yaw and roll now, + lets the right corner be ground back. */
  yawRad: number
  rollRad: number
  /** Tilt about the bar now: the wheel's axis stands at v = P - C cos tilt, n = o + C sin tilt. */
  tiltRad: number
  traverseMm: number
  loadPlaceMm: number
  bearing: Bearing
  volumeRemovedMm3: number
  /** Force on each column per mm of width in the last step. */
  readonly pressureNPerMm: Float64Array
}

/** What it takes to be at a moment again: plain numbers and one field. */
export interface GrindSnapshot {
  readonly step: number
  readonly pose: Readonly<Pose>
  readonly guesses: Guesses
  readonly loadPlaceMm: number
  readonly bearing: Bearing
  readonly volumeRemovedMm3: number
  readonly vMm: Float64Array
  readonly pressureNPerMm: Float64Array
  readonly rimHeightMm: Float64Array
}

/** Borders halfway between nodes, and the ends themselves. */
const borders = (nodes: Float64Array): Float64Array =>
  Float64Array.from({ length: nodes.length + 1 }, (_, i) => {
    const before = nodes[Math.max(i - 1, 0)] as number
    const after = nodes[Math.min(i, nodes.length - 1)] as number
    return (before + after) / 2
  })

/** The edge at the start, at any place across, straight between its points. */
const startEdgeAt = (startEdge: readonly number[] | null, share: number): number => {
  if (startEdge === null) return 0
  const place = share * (startEdge.length - 1)
  const i = Math.min(Math.floor(place), startEdge.length - 2)
  const [a, b] = [startEdge[i] as number, startEdge[i + 1] as number]
  return a + (b - a) * (place - i)
}

const bedOf = (job: Job, setUp: SetUp, freedom: Freedom): Bed => {
  const { widthMm, thicknessMm } = job.blade
  const { across, through } = job.grid
  const { wheelRadiusMm, seatOffsetMm, projectionMm, barDistanceMm, bevelRad } = setUp
  const uMm = acrossMm(widthMm, across)
  const nMm = Float64Array.from({ length: through }, (_, j) => (thicknessMm * j) / (through - 1))
  const rowBorders = borders(nMm)
  return {
    acrossCount: across,
    throughCount: through,
    uMm,
    nMm,
    columnEdgesMm: borders(uMm),
    rowHeightsMm: nMm.map((_, j) => (rowBorders[j + 1] as number) - (rowBorders[j] as number)),
    hold: holdOf(job, setUp, freedom),
    rim: rimOf(job),
    barDistanceMm,
    tiltCosine: (projectionMm + wheelRadiusMm * sin(bevelRad)) / barDistanceMm,
    tiltSine: (wheelRadiusMm * cos(bevelRad) - seatOffsetMm) / barDistanceMm,
  }
}

const startField = (job: Job, bed: Bed, bevelRad: number): Float64Array => {
  const slope = tan(bevelRad)
  const { acrossCount, throughCount, nMm } = bed
  return Float64Array.from({ length: acrossCount * throughCount }, (_, at) => {
    const i = Math.floor(at / throughCount)
    return startEdgeAt(job.blade.startEdge, i / (acrossCount - 1)) + (nMm[at % throughCount] as number) / slope
  })
}

/** The blade before the first step: a flat bevel at its present angle, from the starting edge. */
export const startGrind = (job: Job): Result<GrindState> => {
  const setUp = setUpOf(job)
  if (!setUp.ok) return setUp
  const freedom = freedomOf(job, setUp.value)
  if (!freedom.ok) return freedom
  const bed = bedOf(job, setUp.value, freedom.value)
  const vMm = startField(job, bed, radFromDeg(presentBevelDeg(job, setUp.value)))
  return ok({
    ...bed,
    vMm,
    vStartMm: vMm.slice(),
    weighing: newWeighing(bed, vMm),
    guesses: newGuesses(periodOf(job.motion)),
    reach: reachOf(setUp.value),
    turns: freedom.value.turns,
    step: 0,
    yawRad: 0,
    rollRad: 0,
    tiltRad: atan2(bed.tiltSine, bed.tiltCosine),
    traverseMm: 0,
    loadPlaceMm: 0,
    bearing: 'none',
    volumeRemovedMm3: 0,
    pressureNPerMm: new Float64Array(bed.acrossCount),
  })
}

/** Sets every column of a bevel back by some mm before the first step, as if it had been ground so. */
export const raiseField = (state: GrindState, byMm: (uMm: number) => number): void => {
  const { vMm, vStartMm, uMm, throughCount, weighing } = state
  for (let at = 0; at < vMm.length; at++)
    vStartMm[at] = vMm[at] = (vMm[at] as number) + byMm(uMm[Math.floor(at / throughCount)] as number)
  Object.assign(weighing.scales.clearance, newClearance(vMm, uMm.length))
}

const stiffnessOf = ({ bedStiffnessNPerMm3, removalPerStepMm3, loadN }: Motion): number =>
  effectiveStiffness(bedStiffnessNPerMm3, removalPerStepMm3 / loadN)

/** Takes the step's steel off, all of it, or at a pin as much as the load left to the wheel; and the wheel's share of wear. */
const takeOff = (state: GrindState, motion: Motion): void => {
  const { push, scales } = state.weighing
  const perNewton = motion.removalPerStepMm3 / (state.bearing === 'pin' ? motion.loadN : scales.sums.force)
  const perPatch = perNewton * push.stiffnessNPerMm3
  state.volumeRemovedMm3 += wear(state, state.vMm, scales, perPatch)
  if (motion.grindingRatio !== null) wearWheel(state, scales, perPatch, motion.grindingRatio)
}

/** Sets what is pressed, and where the hand holds the blade, at the state's step. */
const pressAtStep = (state: GrindState, motion: Motion): void => {
  const { step, weighing } = state
  const { pose, push } = weighing
  const { slopeLeft, slopeRight } = settingAt(motion, step)
  pose.traverseMm = state.traverseMm = traverseAtMm(motion, step)
  pose.rollSlope = motion.parasiticRollSlope * pathAt(motion, step)
  push.loadN = motion.loadN
  push.loadPlaceMm = state.loadPlaceMm = loadPlaceMm(motion, step)
  push.stiffnessNPerMm3 = stiffnessOf(motion)
  push.slopeLeft = slopeLeft
  push.slopeRight = slopeRight
  push.handSlope = handSlopeAt(motion, step)
}

const stepOnce = (state: GrindState, motion: Motion): boolean => {
  pressAtStep(state, motion)
  const bearing = balance(state.weighing, guessPose(state.guesses, state.step))
  if (bearing === null || (motion.unstopped && bearing !== 'none')) return false
  notePose(state.guesses, state.weighing.pose, state.step)
  state.bearing = bearing
  takeOff(state, motion)
  state.step++
  return true
}

/** Angles of the pose and pressures, for view and report; the steps themselves use slopes alone. */
const readOut = (state: GrindState): void => {
  readAngles(state)
  const { scales, push } = state.weighing
  readPressure(state, scales, push.stiffnessNPerMm3, state.pressureNPerMm)
}

const readAngles = (state: GrindState): void => {
  const { depthSlope, turnSlope } = state.weighing.pose
  const turnRad = atan(turnSlope)
  state.yawRad = state.turns === 'yaw' ? turnRad : 0
  state.rollRad = state.turns === 'roll' ? turnRad : 0
  state.tiltRad = atan2(state.tiltSine, state.tiltCosine) - atan(depthSlope)
}

/**
 * Grinds on by some steps, in place. The same state and motion always give the same bits.
 * @returns the state, or a problem with the step: `noBalance` where no pose carried the load, `groundAway` where that is
 * because the blade no longer reaches the wheel
 */
export const advance = (state: GrindState, motion: Motion, steps: number): Result<GrindState> => {
  for (let k = 0; k < steps; k++)
    if (!stepOnce(state, motion))
      return failed(problem(isGroundAway(state) ? 'groundAway' : 'noBalance', 'motion', { step: state.step }))
  if (steps > 0) readOut(state)
  return ok(state)
}

/** A moment kept, independent of the state that goes on. */
export const snapshot = (state: GrindState): GrindSnapshot => ({
  step: state.step,
  pose: { ...state.weighing.pose },
  guesses: copyGuesses(state.guesses, newGuesses(state.guesses.depth.found.length)),
  loadPlaceMm: state.loadPlaceMm,
  bearing: state.bearing,
  volumeRemovedMm3: state.volumeRemovedMm3,
  vMm: state.vMm.slice(),
  pressureNPerMm: state.pressureNPerMm.slice(),
  rimHeightMm: state.rim.heightMm.slice(),
})

/** Brings a state of the same job back to a moment kept; what follows is the same to the last bit. */
export const restore = (state: GrindState, kept: GrindSnapshot): void => {
  state.step = kept.step
  Object.assign(state.weighing.pose, kept.pose)
  copyGuesses(kept.guesses, state.guesses)
  state.traverseMm = kept.pose.traverseMm
  state.loadPlaceMm = kept.loadPlaceMm
  state.bearing = kept.bearing
  state.volumeRemovedMm3 = kept.volumeRemovedMm3
  state.vMm.set(kept.vMm)
  state.pressureNPerMm.set(kept.pressureNPerMm)
  state.rim.heightMm.set(kept.rimHeightMm)
  forget(state.weighing.scales.clearance)
  readAngles(state)
}
