import { type Relief, reliefOf } from './edge.ts'
import { type Freedom, mostTurns, slopeOfTurns } from './freedom.ts'
import { advance, startGrind } from './grind.ts'
import type { Job } from './job.ts'
import { planMotion } from './motion.ts'
import type { TurnsReport } from './report.ts'
import { FORMED_CHANGE_MM, RELIEF_AIM_MM } from './tolerances.ts'

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

/** Most formed edges for one answer: the relief is nearly proportional to the turns, so three or four do as a rule. */
const MOST_TRIALS = 12
/** A formed edge has about this share of tan(stop) x half width; where the search starts. */
const FORMED_SHARE = 0.9
/** Below this share the stops are not what holds the edge back: the fingers do not reach far enough. */
const SLACK_SHARE = 0.4

/** A motion that forms an edge quickly: the job's own, in larger bites. */
const quickJob = (job: Job, slope: number): Job => {
  const { widthMm, thicknessMm } = job.blade
  const { loadN, bedStiffnessNPerMm3 } = job.motion
  const volumeMm3 = (ROOFS_TO_FORM * slope * widthMm * widthMm * thicknessMm) / 4
  const bite = (QUICK_SHARE * loadN * QUICK_STEPS_PER_SWEEP) / bedStiffnessNPerMm3
  const sweeps = Math.min(Math.max(Math.ceil(volumeMm3 / bite), FEWEST_SWEEPS), FIRST_SWEEPS_AT_MOST)
  const motion = { ...job.motion, stepsPerSweep: QUICK_STEPS_PER_SWEEP, sweeps, removalPerSweepMm3: volumeMm3 / sweeps }
  return { ...job, grid: QUICK_GRID, motion }
}

/** The relief that free play tends to, by grinding until a tenth more removal changes it no more; null without balance. */
const formedRelief = (job: Job, freedom: Freedom, yawSlopeLeft: number, yawSlopeRight: number): Relief | null => {
  const quick = quickJob(job, Math.max(yawSlopeLeft, yawSlopeRight))
  const started = startGrind(quick)
  if (!started.ok) return null
  const { vMm } = started.value
  const motion = planMotion(quick, { ...freedom, yawSlopeLeft, yawSlopeRight })
  const grindOn = (sweeps: number) => advance(started.value, motion, sweeps * QUICK_STEPS_PER_SWEEP).ok
  if (!grindOn(quick.motion.sweeps)) return null
  let before = reliefOf(vMm, QUICK_GRID.through)
  for (let look = 0; look < MOST_LOOKS; look++) {
    if (!grindOn(Math.ceil(quick.motion.sweeps / 10))) return null
    const now = reliefOf(vMm, QUICK_GRID.through)
    const change = Math.max(Math.abs(now.leftMm - before.leftMm), Math.abs(now.rightMm - before.rightMm))
    before = now
    if (change < FORMED_CHANGE_MM) break
  }
  return before
}

/** One side of the search: turns tried, and the turns known to be too few and too many. */
interface Trial {
  readonly turns: number
  readonly low: number
  readonly high: number
}

/** The next turns on one side: scaled by what the last gave, kept inside the bracket. */
const nextTrial = ({ turns, low, high }: Trial, reliefNowMm: number, reliefMm: number, most: number): Trial => {
  const bracket = reliefNowMm < reliefMm ? { low: turns, high } : { low, high: turns }
  const scaled = Math.min((turns * reliefMm) / Math.max(reliefNowMm, RELIEF_AIM_MM), most)
  const inside = scaled > bracket.low && (scaled < bracket.high || scaled === most)
  return { ...bracket, turns: inside ? scaled : (bracket.low + bracket.high) / 2 }
}

/** Why a side cannot reach its relief, or null while it still may. */
const outOfReach = (job: Job, turns: number, reliefNowMm: number, reliefMm: number): TurnsReport['code'] | null => {
  if (reliefNowMm >= reliefMm) return null
  const straightMm = (slopeOfTurns(job, turns) as number) * (job.blade.widthMm / 2)
  if (job.station.wheelWidthMm / 2 + job.motion.traverseMm < job.blade.widthMm / 2) return 'wheelTooNarrow'
  if (reliefNowMm < SLACK_SHARE * straightMm) return 'fingersTooShort'
  return turns === mostTurns(job) ? 'beyondStopTravel' : null
}

/** Left and right alike: only the side the first sweep takes tells them apart, and that fades as the edge forms. */
const isMirrored = ({ blade, fixture }: Job): boolean => {
  const edge = blade.startEdge ?? []
  return fixture.pivotOffsetMm === 0 && edge.every((v, i) => v === edge[edge.length - 1 - i])
}

const search = (job: Job, freedom: Freedom, reliefMm: number, perTurn: number, most: number): TurnsReport => {
  const first = Math.min(most, reliefMm / (job.blade.widthMm / 2) / perTurn / FORMED_SHARE)
  let left: Trial = { turns: first, low: 0, high: most }
  let right = left
  for (let k = 0; k < MOST_TRIALS; k++) {
    const now = { left: left.turns, right: right.turns }
    const relief = formedRelief(job, freedom, now.left * perTurn, now.right * perTurn)
    if (relief === null) return { ...now, reachable: false, code: 'noBalance' }
    const meanMm = (relief.leftMm + relief.rightMm) / 2
    const { leftMm, rightMm } = isMirrored(job) ? { leftMm: meanMm, rightMm: meanMm } : relief
    if (Math.max(Math.abs(leftMm - reliefMm), Math.abs(rightMm - reliefMm)) < RELIEF_AIM_MM)
      return { ...now, reachable: true, code: 'reachable' }
    const code = outOfReach(job, now.left, leftMm, reliefMm) ?? outOfReach(job, now.right, rightMm, reliefMm)
    if (code !== null) return { ...now, reachable: false, code }
    left = nextTrial(left, leftMm, reliefMm, most)
    right = nextTrial(right, rightMm, reliefMm, most)
  }
  return { left: left.turns, right: right.turns, reachable: true, code: 'reachable' }
}

/**
 * Stop turns on each side that form the wanted relief at both corners, by the contact model, uncalibrated: each trial
 * scales the last, inside a bracket.
 * @returns null where the fixture's arm or pitch is not known
 */
export const turnsForAim = (job: Job, freedom: Freedom, reliefMm: number): TurnsReport | null => {
  if (reliefMm === 0) return { left: 0, right: 0, reachable: true, code: 'reachable' }
  if (job.fixture.kind === 'square') return { left: 0, right: 0, reachable: false, code: 'squareFixture' }
  const most = mostTurns(job)
  const perTurn = slopeOfTurns(job, 1)
  return most === null || perTurn === null ? null : search(job, freedom, reliefMm, perTurn, most)
}
