import { type Relief, reliefOf } from './edge.ts'
import type { Freedom, Stops } from './freedom.ts'
import { advance, type GrindState, startGrind } from './grind.ts'
import type { Job } from './job.ts'
import { planMotion } from './motion.ts'
import { FORMED_CHANGE_MM } from './tolerances.ts'

/** Grid for forming an edge quickly: with its pace, relief within 1 % of the fine grid's, at a hundredth of the work. */
const QUICK_GRID = { across: 29, through: 5 }
const QUICK_STEPS_PER_SWEEP = 12
/** Quick pace: what a step takes off, as a share of what the load presses in; more, and the corners lag behind the stops. */
const QUICK_SHARE = 0.1
/** A roof from stop to stop must be taken off about four times over before the edge is formed. */
const ROOFS_TO_FORM = 4
/** Fewest and most sweeps before the first look, so that a path is walked often enough and a stiff bed does not take for ever. */
const FEWEST_SWEEPS = 60
const FIRST_SWEEPS_AT_MOST = 400
/** Looks, each a tenth more removal later, before the edge is taken as it is. */
const MOST_LOOKS = 12

/** The edge that one setting of the stops tends to. */
export interface Formed {
  readonly relief: Relief
  readonly state: GrindState
  /** Steel taken until a tenth more moved the relief no more. */
  readonly volumeMm3: number
}

/** A motion that forms an edge quickly: the job's own first setting, in larger bites, on a straight bevel that fits the wheel. */
export const quickJob = (job: Job, edgeSlope: number): Job => {
  const { widthMm, thicknessMm } = job.blade
  const { loadN, bedStiffnessNPerMm3 } = job.motion
  const volumeMm3 = (ROOFS_TO_FORM * edgeSlope * widthMm * widthMm * thicknessMm) / 4
  const bite = (QUICK_SHARE * loadN * QUICK_STEPS_PER_SWEEP) / bedStiffnessNPerMm3
  const sweeps = Math.min(Math.max(Math.ceil(volumeMm3 / bite), FEWEST_SWEEPS), FIRST_SWEEPS_AT_MOST)
  const motion = {
    ...job.motion,
    schedule: [],
    stepsPerSweep: QUICK_STEPS_PER_SWEEP,
    sweeps,
    removalPerSweepMm3: Math.max(volumeMm3 / sweeps, bite / FIRST_SWEEPS_AT_MOST),
  }
  return { ...job, station: { ...job.station, grindingRatio: null }, grid: QUICK_GRID, motion }
}

/** Grinds a job's first setting, with other stops, until the edge is formed. @returns null where nothing balances */
export const formEdge = (job: Job, freedom: Freedom, stops: Stops): Formed | null => {
  const quick = quickJob(job, Math.max(stops.slopeLeft, stops.slopeRight) * freedom.edgePerTurn)
  const started = startGrind(quick)
  if (!started.ok) return null
  const state = started.value
  const motion = planMotion(quick, { ...freedom, settings: [stops] })
  const grindOn = (sweeps: number) => advance(state, motion, sweeps * QUICK_STEPS_PER_SWEEP).ok
  if (!grindOn(quick.motion.sweeps)) return null
  let relief = reliefOf(state.vMm, QUICK_GRID.through)
  for (let look = 0; look < MOST_LOOKS; look++) {
    if (!grindOn(Math.ceil(quick.motion.sweeps / 10))) return null
    const now = reliefOf(state.vMm, QUICK_GRID.through)
    const change = Math.max(Math.abs(now.leftMm - relief.leftMm), Math.abs(now.rightMm - relief.rightMm))
    relief = now
    if (change < FORMED_CHANGE_MM) break
  }
  return { relief, state, volumeMm3: state.volumeRemovedMm3 }
}
