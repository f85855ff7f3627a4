import { bandOf } from './band.ts'
import { freedomOf } from './freedom.ts'
import { advance, type GrindState, startGrind } from './grind.ts'
import type { Job } from './job.ts'
import { planMotion } from './motion.ts'
import { ok, type Result } from './result.ts'
import { setUpOf } from './setUp.ts'

/** Where the wheel takes the ink off a blackened bevel in its first sweeps, column by column, as shares of the bevel from edge to heel; null: not touched. */
export interface InkColumn {
  readonly uMm: number
  readonly from: number | null
  readonly to: number | null
}

/** How the bevel that is there meets the wheel as it is set up. */
export type InkVerdict = 'match' | 'heelHigh' | 'edgeHigh' | 'untouched'

export interface FirstInk {
  readonly columns: readonly InkColumn[]
  readonly verdict: InkVerdict
}

/** First sweeps: on and back once, before anybody would stop to look. */
const SWEEPS = 2
/** A bevel seen in a third of a millimetre and less along its length; across, every few millimetres. */
const GRID = { across: 29, through: 33 }
/** Middle of the bare patch within this of the bevel's middle is a match, as a share of the bevel. */
const MATCH_SHARE = 0.17
const MIDDLE = 0.5

const columnOf = (state: GrindState, i: number): InkColumn => {
  const uMm = state.uMm[i] as number
  const band = bandOf(state, i)
  if (band === null) return { uMm, from: null, to: null }
  const { throughCount, vStartMm, nMm } = state
  const last = throughCount - 1
  const dv = (vStartMm[i * throughCount + last] as number) - (vStartMm[i * throughCount] as number)
  const n = nMm[last] as number
  const bevelMm = Math.sqrt(dv * dv + n * n)
  return { uMm, from: band.fromEdgeMm / bevelMm, to: 1 - band.fromHeelMm / bevelMm }
}

/** By the mean of where the middles of the bare columns lie. */
const verdictOf = (columns: readonly InkColumn[]): InkVerdict => {
  const middles = columns.flatMap(({ from, to }) => (from === null || to === null ? [] : [(from + to) / 2]))
  if (middles.length === 0) return 'untouched'
  const mean = middles.reduce((sum, middle) => sum + middle, 0) / middles.length
  if (Math.abs(mean - MIDDLE) <= MATCH_SHARE) return 'match'
  return mean > MIDDLE ? 'heelHigh' : 'edgeHigh'
}

/**
 * The ink of the first sweeps, by the contact grind itself: the bevel that is there (`blade.currentBevelDeg`, flat) on the
 * set-up as it stands.
 */
export const firstInkOf = (job: Job): Result<FirstInk> => {
  const coarse: Job = { ...job, grid: GRID, motion: { ...job.motion, sweeps: SWEEPS, schedule: [] } }
  const setUp = setUpOf(coarse)
  if (!setUp.ok) return setUp
  const freedom = freedomOf(coarse, setUp.value)
  if (!freedom.ok) return freedom
  const started = startGrind(coarse)
  if (!started.ok) return started
  const motion = planMotion(coarse, freedom.value)
  const ground = advance(started.value, motion, SWEEPS * motion.stepsPerSweep)
  if (!ground.ok) return ground
  const columns = Array.from({ length: GRID.across }, (_, i) => columnOf(ground.value, i))
  return ok({ columns, verdict: verdictOf(columns) })
}
