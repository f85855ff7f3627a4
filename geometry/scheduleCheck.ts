import { edgeOf } from './edge.ts'
import { freedomOf } from './freedom.ts'
import { advance, type GrindState, startGrind } from './grind.ts'
import type { Job, Setting } from './job.ts'
import { type Motion, planMotion, sweepsOf } from './motion.ts'
import { deviationMm as deviationOf, nearestScale } from './nearness.ts'
import type { EdgeReport } from './report.ts'
import { withSettings } from './scheduleSettings.ts'
import { setUpOf } from './setUp.ts'

/** Grid on which a schedule found is ground once more and judged: within 0.2 um of one four times as fine, in a quarter of its time. */
const FINE_GRID = { across: 57, through: 9 }
/** Sweeps between two questions whether to go on: some hundredths of a second. */
const SWEEPS_AT_A_TIME = 40

/** A schedule as it would come out at the wheel. */
export interface Checked {
  readonly edge: EdgeReport
  readonly deviationMm: number
  /** What all stops should have been multiplied by. */
  readonly scale: number
}

const grindAll = (job: Job, state: GrindState, motion: Motion, goOn: (share: number) => boolean): boolean => {
  const sweeps = sweepsOf(job)
  for (let done = 0; done < sweeps; ) {
    const next = Math.min(SWEEPS_AT_A_TIME, sweeps - done)
    if (!goOn(next / sweeps) || !advance(state, motion, next * motion.stepsPerSweep).ok) return false
    done += next
  }
  return true
}

/**
 * Grinds a job with the settings of a schedule from its own start, in its own steps.
 * @param goOn told the share of the work to come, before each part of it; false ends the grind
 * @returns null where it was ended or nothing balances
 */
export const checkSettings = (
  job: Job,
  settings: readonly Setting[],
  aimAt: (uMm: number) => number,
  goOn: (share: number) => boolean,
): Checked | null => {
  const scheduled = { ...withSettings(job, settings), grid: FINE_GRID }
  const setUp = setUpOf(scheduled)
  if (!setUp.ok) return null
  const freedom = freedomOf(scheduled, setUp.value)
  const started = startGrind(scheduled)
  if (!freedom.ok || !started.ok) return null
  const state = started.value
  if (!grindAll(scheduled, state, planMotion(scheduled, freedom.value), goOn)) return null
  const edge = edgeOf(state.uMm, state.vMm, state.throughCount)
  const aimMm = edge.edgeUMm.map(aimAt)
  const { scale } = nearestScale(edge.edgeVMm, aimMm)
  return { edge, deviationMm: deviationOf(edge.edgeVMm, aimMm), scale }
}
