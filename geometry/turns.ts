import { type Relief, reliefOf } from './edge.ts'
import { type Freedom, mostTurns, slopeOfTurns } from './freedom.ts'
import { advance, startGrind } from './grind.ts'
import type { Job } from './job.ts'
import { planMotion } from './motion.ts'
import type { TurnsReport } from './report.ts'
import { FORMED_CHANGE_MM, RELIEF_AIM_MM } from './tolerances.ts'

/** Grid and pace for forming an edge quickly: relief within about 2 % of the fine grid's, at a hundredth of the work. */
const QUICK_GRID = { across: 29, through: 5 }
const QUICK_STEPS_PER_SWEEP = 12
/** Sweeps before the first look at whether the edge is formed; each look comes a tenth more removal later. */
const FIRST_LOOK_SWEEPS = 400
/** Most sweeps for one formed edge. */
const MOST_SWEEPS = 1500
/** Most formed edges for one answer: the relief is nearly proportional to the turns, so a few trials do; the rest is for bisection. */
const MOST_TRIALS = 12
/** A formed edge has about this share of tan(stop) x half width; where the search starts. */
const FORMED_SHARE = 0.9
/** Below this share the stops are not what holds the edge back: the fingers do not reach far enough. */
const SLACK_SHARE = 0.4

/** The relief that free play tends to, by grinding until a tenth more removal changes it no more; null without balance. */
const formedRelief = (job: Job, freedom: Freedom, slope: number): Relief | null => {
  const quick = { ...job, grid: QUICK_GRID, motion: { ...job.motion, stepsPerSweep: QUICK_STEPS_PER_SWEEP } }
  const started = startGrind(quick)
  if (!started.ok) return null
  const motion = planMotion(quick, { ...freedom, yawSlopeLeft: slope, yawSlopeRight: slope })
  let sweeps = FIRST_LOOK_SWEEPS
  if (!advance(started.value, motion, sweeps * QUICK_STEPS_PER_SWEEP).ok) return null
  let before = reliefOf(started.value.vMm, QUICK_GRID.through)
  while (sweeps < MOST_SWEEPS) {
    const more = Math.ceil(sweeps / 10)
    if (!advance(started.value, motion, more * QUICK_STEPS_PER_SWEEP).ok) return null
    sweeps += more
    const now = reliefOf(started.value.vMm, QUICK_GRID.through)
    const change = Math.max(Math.abs(now.leftMm - before.leftMm), Math.abs(now.rightMm - before.rightMm))
    before = now
    if (change < FORMED_CHANGE_MM) break
  }
  return before
}

const both = (turns: number, reachable: boolean, code: TurnsReport['code']): TurnsReport => ({
  left: turns,
  right: turns,
  reachable,
  code,
})

const mean = ({ leftMm, rightMm }: Relief): number => (leftMm + rightMm) / 2

/**
 * Stop turns, alike on both sides, that form the wanted relief in the mean of both corners, by the contact model: each trial scales the last, inside a bracket.
 * @returns null where the fixture's arm or pitch is not known
 */
export const turnsForAim = (job: Job, freedom: Freedom, reliefMm: number): TurnsReport | null => {
  if (reliefMm === 0) return both(0, true, 'reachable')
  if (job.fixture.kind === 'square') return both(0, false, 'squareFixture')
  const most = mostTurns(job)
  const perTurn = slopeOfTurns(job, 1)
  if (most === null || perTurn === null) return null
  let low = 0
  let high = most
  let turns = Math.min(most, reliefMm / (job.blade.widthMm / 2) / perTurn / FORMED_SHARE)
  for (let k = 0; k < MOST_TRIALS; k++) {
    const relief = formedRelief(job, freedom, turns * perTurn)
    if (relief === null) return both(turns, false, 'noBalance')
    const reliefNowMm = mean(relief)
    if (Math.abs(reliefNowMm - reliefMm) < RELIEF_AIM_MM) return both(turns, true, 'reachable')
    if (reliefNowMm < reliefMm && turns === most) return both(most, false, 'beyondStopTravel')
    if (reliefNowMm < SLACK_SHARE * turns * perTurn * (job.blade.widthMm / 2))
      return both(turns, false, 'fingersTooShort')
    if (reliefNowMm < reliefMm) low = turns
    else high = turns
    const next = Math.min((turns * reliefMm) / reliefNowMm, most)
    turns = next > low && (next < high || next === most) ? next : (low + high) / 2
  }
  return both(turns, true, 'reachable')
}
