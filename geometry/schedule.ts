import { type AimCurve, aimCurveOver } from './aimCurve.ts'
import { type Freedom, freedomOf, mostSlope } from './freedom.ts'
import type { Job } from './job.ts'
import { failed, ok, problem, type Result } from './result.ts'
import { type Counted, curvedPlans, type ScheduleCode, type SchedulePlan, straightPlans } from './schedulePlans.ts'
import { setUpOf } from './setUp.ts'

/**
 * Settings in turn that bring the edge as near as may be to a wanted curve. One setting leaves a roof; a second with narrower
 * stops or less reach takes the ridge off; a third takes off what is left. The first is always ground until its edge is formed:
 * a wider one stopped on its way may come as near, but then the relief hangs on how fast wheel and hand cut.
 *
 * Sought on a coarse grid (further settings from a first one kept, by `leastOf`; the first scaled so that the relief comes
 * out), then set as the hand can set it, ground once more on a fine grid and judged there: greatest deviation over the width
 * after the best offset along v (`nearness`).
 */
export interface Schedule {
  /** With at most one, two, three settings: none is worse than the one before it. Empty where even the first cannot be made. */
  readonly plans: readonly SchedulePlan[]
  readonly reachable: boolean
  /** Why the wanted relief or nearness cannot be met. */
  readonly code: ScheduleCode
}

export interface ScheduleOptions {
  readonly mostSettings: 1 | 2 | 3
  /** A greatest deviation that would do (mm); without it the nearest found is taken as met. */
  readonly nearEnoughMm?: number
}

/** Work to be expected of one, two, three settings, in coarse grinds: for progress alone. */
const EXPECTED_WORK = [130, 430, 1100]

const scheduleOf = (plans: readonly SchedulePlan[], code: ScheduleCode, nearEnoughMm: number): Schedule => {
  const near = (plans[plans.length - 1]?.deviationMm ?? Number.POSITIVE_INFINITY) <= nearEnoughMm
  const judged = code === 'reachable' && !near ? 'notNearEnough' : code
  return { plans, reachable: judged === 'reachable', code: judged }
}

/** Tells progress as a share that only grows, 1 kept for the end. */
const counter = (expected: number, onProgress: (share: number) => void): ((work: number) => void) => {
  let done = 0
  return (work) => {
    done += work
    onProgress(done / (done + Math.max(expected - done, expected / 50)))
  }
}

/** A fixture that has nothing to set. */
const nothingToSet = (job: Job, reliefMm: number): ScheduleCode | null => {
  if (reliefMm === 0) return null
  if (job.fixture.kind === 'square') return 'squareFixture'
  return mostSlope(job) === null ? 'noStops' : null
}

const searchOf = (
  job: Job,
  freedom: Freedom,
  aimAt: (uMm: number) => number,
  count: (work: number) => void,
  isCancelled: () => boolean,
): Counted => ({ job, freedom, aimAt, most: mostSlope(job) ?? 0, count, onTrial: () => count(1), isCancelled })

/**
 * Up to three settings of stops, finger reach and sweeps for a wanted curve. The job gives blade, station, fixture, path,
 * load and traverse; its own stops, reach as the widest, and starting edge; the first setting's stops are found anew.
 * Deterministic. Takes about a second for two settings, two for three.
 *
 * @param onProgress told a growing share of the work, 0 to 1
 * @param isCancelled asked every few hundredths of a second
 * @returns the plans, with a reason where the curve cannot be met; or the problem `cancelled`
 */
export const planSchedule = (
  job: Job,
  aimCurve: AimCurve,
  { mostSettings, nearEnoughMm = Number.POSITIVE_INFINITY }: ScheduleOptions,
  onProgress: (share: number) => void,
  isCancelled: () => boolean,
): Result<Schedule> => {
  const curve = aimCurveOver(aimCurve, job.blade.widthMm)
  if (!curve.ok) return curve
  const setUp = setUpOf(job)
  if (!setUp.ok) return setUp
  const freedom = freedomOf(job, setUp.value)
  if (!freedom.ok) return freedom
  const { reliefMm } = aimCurve
  const nothing = nothingToSet(job, reliefMm)
  if (nothing !== null) return ok(scheduleOf([], nothing, nearEnoughMm))
  const count = counter(EXPECTED_WORK[mostSettings - 1] as number, onProgress)
  const search = searchOf(job, freedom.value, curve.value, count, isCancelled)
  const [plans, code] =
    reliefMm === 0 ? straightPlans(search, mostSettings) : curvedPlans(search, reliefMm, mostSettings)
  if (isCancelled()) return failed(problem('cancelled'))
  onProgress(1)
  return ok(scheduleOf(plans, code, nearEnoughMm))
}
