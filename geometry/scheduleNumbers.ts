import type { Stops } from './freedom.ts'
import type { Phase, Sought } from './phases.ts'
import { isMirrored } from './turns.ts'

/**
 * Further settings as plain numbers for the search, a few for each in turn: its stops (one number where left and right are alike)
 * as shares of the first setting's, its reach as a share of the job's, and the root of its sweeps, which evens out the steps.
 */
export type Numbers = readonly number[]

/** What the numbers stand for. */
export interface Scope extends Sought {
  /** Steepest slope of the stops. */
  readonly most: number
}

/** Widest stops of a further setting, as a share of the first's. */
const WIDEST_SHARE = 1.5
/** Sweeps of a further setting: one pair at least; more than this would be a first setting anew. */
const FEWEST_SWEEPS = 2
const MOST_SWEEPS = 200
/** Where one more setting is sought from, the best of them all: shares of the first's stops, of the job's reach, of the first's sweeps. */
const STARTS = { stops: [0, 0.3, 0.6], reach: [0.3, 1], sweeps: [0.01, 0.035, 0.1] }
/** First steps of the search: stops and reach as shares, sweeps by their root. */
const STEPS = { stop: 0.1, reach: 0.1, sweepsRoot: 0.6 }

const within = (value: number, least: number, most: number): number => Math.min(Math.max(value, least), most)

/** How many stops a setting is sought by. */
export const stopsIn = ({ job }: Sought): 1 | 2 => (isMirrored(job) ? 1 : 2)

/** How many further settings there are. */
export const settingsIn = (of: Sought, numbers: Numbers): number => numbers.length / (stopsIn(of) + 2)

const phaseOf = ({ job, most }: Scope, first: Stops, numbers: Numbers): Phase => {
  const [left, right] = [numbers[0] as number, numbers[numbers.length - 3] as number]
  const [reach, root] = [numbers[numbers.length - 2] as number, numbers[numbers.length - 1] as number]
  const stop = (slope: number, share: number) => Math.min(slope * within(share, 0, WIDEST_SHARE), most)
  return {
    slopeLeft: stop(first.slopeLeft, left),
    slopeRight: stop(first.slopeRight, right),
    fingerReachMm: job.motion.fingerReachMm * within(reach, 0, 1),
    sweeps: within(root * Math.abs(root), FEWEST_SWEEPS, MOST_SWEEPS),
  }
}

/** The settings that numbers stand for, kept within what stops, fingers and patience allow. */
export const phasesOf = (of: Scope, first: Stops, numbers: Numbers): readonly Phase[] => {
  const size = stopsIn(of) + 2
  return Array.from({ length: settingsIn(of, numbers) }, (_, k) =>
    phaseOf(of, first, numbers.slice(k * size, (k + 1) * size)),
  )
}

/** Numbers of one setting more, in every way worth beginning with. */
export const startsAfter = (of: Sought, first: Phase, numbers: Numbers): readonly Numbers[] =>
  STARTS.stops.flatMap((stop) =>
    STARTS.reach.flatMap((reach) =>
      STARTS.sweeps.map((share) => {
        const sweeps = Math.max(share * first.sweeps, FEWEST_SWEEPS)
        return [...numbers, ...Array<number>(stopsIn(of)).fill(stop), reach, Math.sqrt(sweeps)]
      }),
    ),
  )

type Meaning = 'stop' | 'reach' | 'sweepsRoot'

const meaningOf = (of: Sought, k: number): Meaning => {
  const size = stopsIn(of) + 2
  return (['sweepsRoot', 'reach'] as const)[size - 1 - (k % size)] ?? 'stop'
}

/** First steps of a search through numbers. */
export const stepsThrough = (of: Sought, numbers: Numbers): Numbers => numbers.map((_, k) => STEPS[meaningOf(of, k)])

/** The stops among numbers. */
export const stopsAmong = (of: Sought, numbers: Numbers): Numbers =>
  numbers.filter((_, k) => meaningOf(of, k) === 'stop')

/** Numbers with other stops. @param stops as many as `stopsAmong` gives */
export const withStops = (of: Sought, numbers: Numbers, stops: Numbers): Numbers => {
  let next = 0
  return numbers.map((value, k) => (meaningOf(of, k) === 'stop' ? (stops[next++] as number) : value))
}

/** Numbers with reach and sweeps of their settings. @param phases whole mm and pairs of sweeps, as the hand can keep them */
export const withReachAndSweeps = (of: Scope, numbers: Numbers, phases: readonly Phase[]): Numbers => {
  const { fingerReachMm } = of.job.motion
  const size = stopsIn(of) + 2
  return numbers.map((value, k) => {
    const phase = phases[Math.floor(k / size)] as Phase
    const meaning = meaningOf(of, k)
    if (meaning === 'stop') return value
    if (meaning === 'sweepsRoot') return Math.sqrt(phase.sweeps)
    return fingerReachMm === 0 ? 0 : phase.fingerReachMm / fingerReachMm
  })
}
