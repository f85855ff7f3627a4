import type { Relief } from './edge.ts'
import { reliefOf } from './edge.ts'
import type { Freedom, Stops } from './freedom.ts'
import { advance, type GrindState, raiseField, startGrind } from './grind.ts'
import type { Job } from './job.ts'
import { type Motion, pathOf, planMotion } from './motion.ts'
import { reachLimitMm, reliefPerMm3 } from './reach.ts'
import { FORMED_CHANGE_MM } from './tolerances.ts'

/** Grid for forming an edge quickly: relief within 2 % of the fine grid's, at a hundredth of the work. */
export const QUICK_GRID = { across: 29, through: 5 }
const QUICK_STEPS_PER_SWEEP = 12
/** Quick pace: what a step takes off, as a share of what the load presses in; more, and the corners lag behind the stops. */
const QUICK_SHARE = 0.1
/** From a flat bevel a roof from stop to stop must be taken off about four times over before the edge is formed; from a roof, twice. */
const ROOFS_FROM_FLAT = 4
const ROOFS_FROM_ROOF = 2
/** Fewest and most sweeps before the first look, so that a path is walked often enough and a stiff bed does not take for ever. */
const FEWEST_SWEEPS = 60
const FIRST_SWEEPS_AT_MOST = 400
/** Looks, each a tenth more removal later, before the edge is taken as it is. */
const MOST_LOOKS = 12

/** A formed roof has this share of stop slope x half width at its corners, and a ridge rounded over this share of the half width. */
export const FORMED_SHARE = 0.9
const RIDGE_SHARE = 0.06

/** The edge that one setting of the stops tends to. */
export interface Formed {
  /** Mean over a period, which a big bite sways from side to side. */
  readonly relief: Relief
  readonly state: GrindState
  /** Sweeps at the job's own pace until it is formed, from a flat bevel. */
  readonly sweeps: number
}

/** Steel of a roof from stop to stop, corners down by slope x half width. */
const roofMm3 = ({ blade }: Job, edgeSlope: number): number =>
  (edgeSlope * blade.widthMm * blade.widthMm * blade.thicknessMm) / 4

/** A motion that takes a volume quickly: the job's own first setting, in larger bites, on a wheel that keeps its shape. */
const quickRun = (job: Job, volumeMm3: number): Job => {
  const { loadN, bedStiffnessNPerMm3 } = job.motion
  const bite = (QUICK_SHARE * loadN * QUICK_STEPS_PER_SWEEP) / bedStiffnessNPerMm3
  const sweeps = Math.min(Math.max(Math.ceil(volumeMm3 / bite), FEWEST_SWEEPS), FIRST_SWEEPS_AT_MOST)
  const removalPerSweepMm3 = Math.max(volumeMm3 / sweeps, bite / FIRST_SWEEPS_AT_MOST)
  const motion = { ...job.motion, schedule: [], stepsPerSweep: QUICK_STEPS_PER_SWEEP, sweeps, removalPerSweepMm3 }
  return { ...job, station: { ...job.station, grindingRatio: null }, grid: QUICK_GRID, motion }
}

/** A motion that forms an edge of some slope quickly, from a flat bevel. */
export const quickJob = (job: Job, edgeSlope: number): Job => quickRun(job, ROOFS_FROM_FLAT * roofMm3(job, edgeSlope))

/** Gives the bevel the roof that the stops tend to, so that only its finer shape is left to form. */
const startAsRoof = (state: GrindState, { slopeLeft, slopeRight }: Stops, edgePerTurn: number): void => {
  const halfWidthMm = state.uMm[state.uMm.length - 1] as number
  const round = (x: number) => Math.sqrt(x * x + RIDGE_SHARE * RIDGE_SHARE) - RIDGE_SHARE
  raiseField(state, (uMm) => {
    const slope = uMm < 0 ? slopeLeft : slopeRight
    const share = round(Math.abs(uMm) / halfWidthMm) / round(1)
    return FORMED_SHARE * slope * edgePerTurn * halfWidthMm * share
  })
}

/** Grinds one period on. @returns the mean relief of its two ends, or null without balance */
const reliefOfPeriod = (state: GrindState, motion: Motion): Relief | null => {
  const ends: Relief[] = []
  for (let sweep = 0; sweep < 2; sweep++) {
    if (!advance(state, motion, motion.stepsPerSweep).ok) return null
    ends.push(reliefOf(state.vMm, state.throughCount))
  }
  const [a, b] = ends as [Relief, Relief]
  return { leftMm: (a.leftMm + b.leftMm) / 2, rightMm: (a.rightMm + b.rightMm) / 2 }
}

/** Grinds until a tenth more removal changes the relief no more. */
const settle = (state: GrindState, motion: Motion, sweeps: number): Relief | null => {
  if (!advance(state, motion, sweeps * motion.stepsPerSweep).ok) return null
  let relief = reliefOfPeriod(state, motion)
  for (let look = 0; look < MOST_LOOKS && relief; look++) {
    if (!advance(state, motion, Math.ceil(sweeps / 10) * motion.stepsPerSweep).ok) return null
    const now = reliefOfPeriod(state, motion)
    if (now === null) return null
    const change = Math.max(Math.abs(now.leftMm - relief.leftMm), Math.abs(now.rightMm - relief.rightMm))
    relief = now
    if (change < FORMED_CHANGE_MM) break
  }
  return relief
}

/** Sweeps from a flat bevel: the roof's steel some times over, or longer where the fingers hardly reach beyond their limit. */
const sweepsToForm = (job: Job, motion: Motion, edgeSlope: number, relief: Relief): number => {
  const { blade, motion: asked } = job
  const growth = reliefPerMm3(motion.path, asked.fingerReachMm, blade.widthMm, blade.thicknessMm)
  const growingMm3 = growth > 0 ? Math.max(relief.leftMm, relief.rightMm) / growth : 0
  return Math.ceil(Math.max(ROOFS_FROM_FLAT * roofMm3(job, edgeSlope), growingMm3) / asked.removalPerSweepMm3)
}

/**
 * The edge that a job's first setting tends to, with other stops. Where the fingers reach beyond the limit of the law it
 * begins as a roof, else flat, as it will stay.
 * @returns null where nothing balances
 */
export const formEdge = (job: Job, freedom: Freedom, stops: Stops): Formed | null => {
  const edgeSlope = Math.max(stops.slopeLeft, stops.slopeRight) * freedom.edgePerTurn
  const free = { ...freedom, settings: [stops] } as const
  const grows = job.motion.fingerReachMm > reachLimitMm(pathOf(job.motion), job.blade.widthMm)
  const quick = grows ? quickRun(job, ROOFS_FROM_ROOF * roofMm3(job, edgeSlope)) : quickJob(job, edgeSlope)
  const started = startGrind(quick)
  if (!started.ok) return null
  if (grows) startAsRoof(started.value, stops, freedom.edgePerTurn)
  const motion = planMotion(quick, free)
  const relief = settle(started.value, motion, quick.motion.sweeps)
  return relief && { relief, state: started.value, sweeps: sweepsToForm(job, motion, edgeSlope, relief) }
}
