import { edgeRow, reliefOf } from './edge.ts'
import type { Stops } from './freedom.ts'
import { type GrindSnapshot, restore, snapshot } from './grind.ts'
import { nearestScale } from './nearness.ts'
import { type CoarseGrind, formFirst, grindPhase, inPairs, type Phase } from './phases.ts'
import {
  type Numbers,
  phasesOf,
  type Scope,
  settingsIn,
  startsAfter,
  stepsThrough,
  stopsAmong,
  stopsIn,
  withReachAndSweeps,
  withStops,
} from './scheduleNumbers.ts'
import { leastOf } from './simplex.ts'

/** What a schedule is sought for, and who is told. */
export interface Search extends Scope {
  readonly aimAt: (uMm: number) => number
  readonly isCancelled: () => boolean
  /** Called at each coarse grind. */
  readonly onTrial: () => void
}

/** What a search has come to: settings in turn. */
export interface Found {
  readonly first: Phase
  readonly further: readonly Phase[]
  /** The further settings as they were sought. */
  readonly numbers: Numbers
  /** Mean relief of the corners. */
  readonly reliefMm: number
}

/** Trials for each further setting: at first, again when the first setting has been scaled, and for its stops alone. */
const TRIALS = { first: 60, again: 30, stops: 15 }
/** Later searches begin with steps this much smaller. */
const NEAR = 1 / 3
/** The search ends when its corners agree to a tenth of a micrometre: a tenth of what is worth reporting. */
const TOLERANCE_MM = 1e-4
/** Rounds of searching and scaling: the shape hangs but little on the size, so two or three do. */
const MOST_ROUNDS = 4
/** Scaled nearly enough, as a share of the relief. */
const SCALED = 0.005
/** The second setting takes relief: the first is widened beforehand by about so much. */
const WIDENED = 1.2

/** A first setting done, from which further ones are tried. */
interface Begun {
  readonly grind: CoarseGrind
  readonly kept: GrindSnapshot
  readonly first: Phase
  readonly aimMm: Float64Array
}

const begin = (of: Search, { slopeLeft, slopeRight }: Stops): Begun | null => {
  of.onTrial()
  const grind = formFirst(of, { slopeLeft, slopeRight })
  if (grind === null) return null
  const { fingerReachMm, removalPerSweepMm3 } = of.job.motion
  const sweeps = grind.state.volumeRemovedMm3 / removalPerSweepMm3
  const first = { slopeLeft, slopeRight, fingerReachMm, sweeps }
  return { grind, kept: snapshot(grind.state), first, aimMm: grind.state.uMm.map(of.aimAt) }
}

/** The edge after further settings, or null where nothing balances. */
const edgeAfter = (of: Search, { grind, kept }: Begun, further: readonly Phase[]): Float64Array | null => {
  of.onTrial()
  restore(grind.state, kept)
  if (!further.every((phase) => grindPhase(grind, phase, of))) return null
  return edgeRow(grind.state.vMm, grind.state.throughCount)
}

/** How far the edge stays from the curve when all stops are scaled alike. */
const apartMm = (of: Search, begun: Begun, numbers: Numbers): number => {
  if (of.isCancelled()) return Number.POSITIVE_INFINITY
  const edge = edgeAfter(of, begun, phasesOf(of, begun.first, numbers))
  return edge === null ? Number.POSITIVE_INFINITY : nearestScale(edge, begun.aimMm).deviationMm
}

/** Searches on from numbers. @param share of the usual first steps */
const seek = (of: Search, begun: Begun, numbers: Numbers, trials: number, share: number): Numbers => {
  const options = {
    steps: stepsThrough(of, numbers).map((step) => step * share),
    mostTrials: trials * settingsIn(of, numbers),
    tolerance: TOLERANCE_MM,
    isStopped: of.isCancelled,
  }
  return leastOf((at) => apartMm(of, begun, at), numbers, options).at
}

const bestOf = (of: Search, begun: Begun, starts: readonly Numbers[]): Numbers => {
  const values = starts.map((numbers) => apartMm(of, begun, numbers))
  return starts[values.indexOf(values.reduce((a, b) => Math.min(a, b)))] as Numbers
}

/** Stops that would bring the corners to the relief wanted: scaled together, and against each other where the edge is skew. */
const rescaled = (of: Search, stops: Stops, edgeMm: Float64Array, aimMm: Float64Array): Stops => {
  const { scale } = nearestScale(edgeMm, aimMm)
  const { leftMm, rightMm } = reliefOf(edgeMm)
  const skew = stopsIn(of) === 1 ? 0 : (rightMm - leftMm) / (rightMm + leftMm)
  return {
    slopeLeft: Math.min(stops.slopeLeft * scale * (1 + skew), of.most),
    slopeRight: Math.min(stops.slopeRight * scale * (1 - skew), of.most),
  }
}

const differ = (a: Stops, b: Stops): boolean =>
  Math.abs(a.slopeLeft - b.slopeLeft) > SCALED * b.slopeLeft ||
  Math.abs(a.slopeRight - b.slopeRight) > SCALED * b.slopeRight

/** Searches the further settings and scales the first one in turn, until both stay. */
const tune = (of: Search, from: Stops, starts: readonly Numbers[]): Found | null => {
  let stops = from
  let numbers: Numbers | null = null
  for (let round = 1; ; round++) {
    const begun = begin(of, stops)
    if (begun === null) return null
    numbers =
      numbers === null
        ? seek(of, begun, bestOf(of, begun, starts), TRIALS.first, 1)
        : seek(of, begun, numbers, TRIALS.again, NEAR)
    const further = phasesOf(of, begun.first, numbers)
    const edgeMm = edgeAfter(of, begun, further)
    if (edgeMm === null) return null
    const next = rescaled(of, stops, edgeMm, begun.aimMm)
    if (round === MOST_ROUNDS || of.isCancelled() || !differ(next, stops))
      return { first: begun.first, further, numbers, reliefMm: meanOf(edgeMm) }
    stops = next
  }
}

const meanOf = (edgeMm: Float64Array): number => {
  const { leftMm, rightMm } = reliefOf(edgeMm)
  return (leftMm + rightMm) / 2
}

/** The one setting that brings the edge nearest. @returns null where nothing balances */
export const findFirst = (of: Search, stops: Stops): Found | null => tune(of, stops, [[]])

/** One setting more than found before. @returns null where nothing balances */
export const findFurther = (of: Search, { first, numbers }: Found): Found | null =>
  tune(of, turnedOut(of, first, numbers.length === 0 ? WIDENED : 1), startsAfter(of, first, numbers))

/** Stops of a setting, both turned out alike. */
export const turnedOut = <T extends Stops>({ most }: Scope, setting: T, scale: number): T => ({
  ...setting,
  slopeLeft: Math.min(setting.slopeLeft * scale, most),
  slopeRight: Math.min(setting.slopeRight * scale, most),
})

/** Reach to the millimetre and sweeps in pairs, as the hand can keep them, and the stops sought once more for these. */
export const settle = (of: Search, found: Found): Found | null => {
  const begun = begin(of, found.first)
  if (begun === null) return null
  const mostMm = of.job.motion.fingerReachMm
  const kept = found.further.map((phase) => ({
    ...phase,
    fingerReachMm: Math.min(Math.round(phase.fingerReachMm), mostMm),
    sweeps: inPairs(phase.sweeps),
  }))
  const numbers = withReachAndSweeps(of, found.numbers, kept)
  const stops = stopsAmong(of, numbers)
  const options = {
    steps: stops.map(() => NEAR * 0.1),
    mostTrials: TRIALS.stops * kept.length,
    tolerance: TOLERANCE_MM,
    isStopped: of.isCancelled,
  }
  const best = leastOf((at) => apartMm(of, begun, withStops(of, numbers, at)), stops, options).at
  return { ...found, numbers, further: phasesOf(of, begun.first, withStops(of, numbers, best)) }
}
