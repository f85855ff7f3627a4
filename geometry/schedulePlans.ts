import { FORMED_SHARE } from './formed.ts'
import type { Setting } from './job.ts'
import type { Phase } from './phases.ts'
import { quantities } from './quantities.ts'
import type { TurnsReport } from './report.ts'
import { type Checked, checkSettings } from './scheduleCheck.ts'
import { type Found, findFirst, findFurther, type Search, settle, turnedOut } from './scheduleSearch.ts'
import { settingOf } from './scheduleSettings.ts'
import { outOfReach } from './turns.ts'

/** Settings in turn and what comes of them, as ground on the fine grid. */
export interface SchedulePlan {
  /** One to three, in turn; `withSettings` writes them into a job. */
  readonly settings: readonly Setting[]
  readonly deviationMm: number
  readonly reliefLeftMm: number
  readonly reliefRightMm: number
  /** Of all settings together. */
  readonly sweeps: number
}

/** Whether a schedule does what is wanted, or why not. */
export type ScheduleCode = TurnsReport['code'] | 'noStops' | 'tooManySweeps' | 'notNearEnough'

/** Off by more than this share of the relief on the fine grid, a schedule is scaled and ground there once more. */
const FINE_SCALED = 0.003
/** Work of a grind on the fine grid, in coarse ones: for progress alone. */
const FINE_GRIND_WORK = 60

const planOf = (settings: readonly Setting[], { edge, deviationMm }: Checked): SchedulePlan => ({
  settings,
  deviationMm,
  reliefLeftMm: edge.reliefLeftMm,
  reliefRightMm: edge.reliefRightMm,
  sweeps: settings.reduce((sum, { sweeps }) => sum + sweeps, 0),
})

/** Most sweeps that a job takes of one setting. */
const MOST_SWEEPS = quantities.motion.sweeps.max

/** A search whose work is counted. */
export interface Counted extends Search {
  readonly count: (work: number) => void
}

const checked = (of: Counted, phases: readonly Phase[]): SchedulePlan | null => {
  const settings = phases.map((phase) => settingOf(of.job, phase, of.freedom))
  const goOn = (share: number): boolean => {
    of.count(share * FINE_GRIND_WORK)
    return !of.isCancelled()
  }
  const found = checkSettings(of.job, settings, of.aimAt, goOn)
  if (found === null) return null
  const plan = planOf(settings, found)
  if (Math.abs(found.scale - 1) < FINE_SCALED) return plan
  const again = phases.map((phase) => settingOf(of.job, turnedOut(of, phase, found.scale), of.freedom))
  const refound = checkSettings(of.job, again, of.aimAt, goOn)
  return refound === null ? plan : nearer(plan, planOf(again, refound))
}

const nearer = (a: SchedulePlan, b: SchedulePlan): SchedulePlan => (b.deviationMm < a.deviationMm ? b : a)

/** Adds the plan with one setting more, or the last one again where that is no nearer. @returns what was found, to go on from */
const addPlan = (of: Counted, plans: SchedulePlan[], before: Found): Found | null => {
  const found = findFurther(of, before)
  const settled = found && settle(of, found)
  const plan = settled && settled.first.sweeps <= MOST_SWEEPS ? checked(of, [settled.first, ...settled.further]) : null
  const last = plans[plans.length - 1] as SchedulePlan
  plans.push(plan ? nearer(last, plan) : last)
  return settled
}

/** Relief short by less than this share is what lies between corner and best fit, not a want of reach. */
const SHORT_SHARE = 0.05

/** Why even the first setting cannot be made: then nothing further is sought. */
const hindrance = (
  { job, freedom, most }: Search,
  { first, reliefMm: foundMm }: Found,
  reliefMm: number,
): ScheduleCode => {
  const slope = Math.max(first.slopeLeft, first.slopeRight)
  const short = foundMm < (1 - SHORT_SHARE) * reliefMm
  const reason = short ? outOfReach({ job, freedom, reliefMm, most }, slope, foundMm) : null
  return reason ?? (first.sweeps > MOST_SWEEPS ? 'tooManySweeps' : 'reachable')
}

/** Plans with at most one, two, three settings, and why even the first cannot be made. */
export type Plans = readonly [readonly SchedulePlan[], ScheduleCode]

/** All plans for a curve that is none: the stops home. */
export const straightPlans = (of: Counted, mostSettings: number): Plans => {
  const { fingerReachMm, sweeps } = of.job.motion
  const plan = checked(of, [{ slopeLeft: 0, slopeRight: 0, fingerReachMm, sweeps }])
  return plan === null ? [[], 'noBalance'] : [Array<SchedulePlan>(mostSettings).fill(plan), 'reachable']
}

/** Plans with one setting more each, as far as asked. */
export const curvedPlans = (of: Counted, reliefMm: number, mostSettings: number): Plans => {
  const { widthMm } = of.job.blade
  const slope = Math.min(reliefMm / (widthMm / 2) / of.freedom.edgePerTurn / FORMED_SHARE, of.most)
  const first = findFirst(of, { slopeLeft: slope, slopeRight: slope })
  if (first === null) return [[], 'noBalance']
  const code = hindrance(of, first, reliefMm)
  if (code !== 'reachable') return [[], code]
  const one = checked(of, [first.first])
  if (one === null) return [[], 'noBalance']
  const plans = [one]
  for (let from: Found | null = first; plans.length < mostSettings; )
    if (from !== null) from = addPlan(of, plans, from)
    else plans.push(plans[plans.length - 1] as SchedulePlan)
  return [plans, code]
}
