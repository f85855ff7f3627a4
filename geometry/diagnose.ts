import { firstInkOf, type InkColumn } from './firstInk.ts'
import { hollowOf } from './hollow.ts'
import type { Job } from './job.ts'
import { quickGrind } from './quickGrind.ts'
import { setUpOf } from './setUp.ts'

/** What can be seen of a grind gone wrong. */
export const symptoms = [
  'inkHeel',
  'inkEdge',
  'inkLeft',
  'inkRight',
  'inkMiddle',
  'inkCorners',
  'curveLess',
  'curveMore',
  'curveNone',
  'cornerLeft',
  'cornerRight',
  'trackOne',
  'trackBoth',
  'burrGaps',
  'bandBroke',
  'colour',
  'chatter',
  'dullSoon',
] as const
export type Symptom = (typeof symptoms)[number]

/** What may have made it so: inputs of the model, each at a size that happens. */
export const engineCauses = [
  'setUpKeen',
  'setUpBlunt',
  'barRollLeft',
  'barRollRight',
  'coneLeft',
  'coneRight',
  'crown',
  'hollowWheel',
  'mountingLeft',
  'mountingRight',
  'stopLeftOpen',
  'stopRightOpen',
  'stopsShut',
  'lash',
  'fingersShort',
  'tooFewSweeps',
  'wheelNarrow',
] as const
export type EngineCause = (typeof engineCauses)[number]

/** Causes that no wheel knows of, with what they show: common practice. */
export const tradeCauses = {
  lateralLever: ['trackOne'],
  setTooDeep: ['trackBoth'],
  noCurve: ['trackBoth', 'curveNone'],
  honedFlat: ['curveLess', 'trackBoth'],
  capIron: ['chatter', 'trackBoth'],
  burned: ['colour', 'dullSoon'],
  glazedWheel: ['colour', 'chatter'],
  wornBack: ['dullSoon', 'burrGaps'],
  wrongStops: ['bandBroke'],
  wheelOutOfRound: ['chatter'],
} as const satisfies Record<string, readonly Symptom[]>
export type TradeCause = keyof typeof tradeCauses

/** Sizes that happen in a workshop: from memory and common practice. */
const OFF_MM = 2
const ROLL_DEG = 0.3
const CONE_MM = 0.1
const CROWN_MM = 0.1
const MOUNTING_DEG = 0.4
const OPEN_TURNS = 0.75
const LASH_MM = 0.25
const REACH_SHARE = 0.55
const SWEEPS_SHARE = 0.25
const NARROW_SHARE = 0.45

const withErrors = (job: Job, errors: Partial<Job['errors']>): Job => ({ ...job, errors: { ...job.errors, ...errors } })
const withMotion = (job: Job, motion: Partial<Job['motion']>): Job => ({ ...job, motion: { ...job.motion, ...motion } })

/** Clamped further out or in than meant: what the bar's place does is the same. */
const withProjectionOff = (job: Job, byMm: number): Job => {
  const setUp = setUpOf(job)
  if (!setUp.ok) return job
  const { projectionMm, barDistanceMm } = setUp.value
  return { ...job, aim: { ...job.aim, projectionMm: projectionMm + byMm, barDistanceMm, bevelAngleDeg: null } }
}

/** A bevel that the set-up meets in its middle, as one does that was ground by it before: what ink shows is then the fault's. */
const withMatchingBevel = (job: Job): Job => {
  const setUp = setUpOf(job)
  if (!setUp.ok) return job
  const { wheelRadiusMm, bevelRad } = setUp.value
  const { chordAngleDeg } = hollowOf(wheelRadiusMm, bevelRad, job.blade.thicknessMm)
  return { ...job, blade: { ...job.blade, currentBevelDeg: chordAngleDeg } }
}

/** The job as it would be with one thing wrong. */
export const withFault = (job: Job, cause: EngineCause): Job => {
  const { stopTurnsLeft, stopTurnsRight, fingerReachMm, sweeps } = job.motion
  switch (cause) {
    case 'setUpKeen':
      return withProjectionOff(job, OFF_MM)
    case 'setUpBlunt':
      return withProjectionOff(job, -OFF_MM)
    case 'barRollLeft':
      return withErrors(job, { barRollDeg: -ROLL_DEG })
    case 'barRollRight':
      return withErrors(job, { barRollDeg: ROLL_DEG })
    case 'coneLeft':
      return withErrors(job, { wheelConeMm: CONE_MM })
    case 'coneRight':
      return withErrors(job, { wheelConeMm: -CONE_MM })
    case 'crown':
      return withErrors(job, { wheelCrownMm: CROWN_MM })
    case 'hollowWheel':
      return withErrors(job, { wheelCrownMm: -CROWN_MM })
    case 'mountingLeft':
      return withErrors(job, { mountingAskewDeg: -MOUNTING_DEG })
    case 'mountingRight':
      return withErrors(job, { mountingAskewDeg: MOUNTING_DEG })
    case 'stopLeftOpen':
      return withMotion(job, { stopTurnsLeft: stopTurnsLeft + OPEN_TURNS })
    case 'stopRightOpen':
      return withMotion(job, { stopTurnsRight: stopTurnsRight + OPEN_TURNS })
    case 'stopsShut':
      return withMotion(job, { stopTurnsLeft: 0, stopTurnsRight: 0 })
    case 'lash':
      return withErrors(job, { stopLashMm: LASH_MM })
    case 'fingersShort':
      return withMotion(job, { fingerReachMm: fingerReachMm * REACH_SHARE })
    case 'tooFewSweeps':
      return withMotion(job, { sweeps: Math.max(1, Math.round(sweeps * SWEEPS_SHARE)), schedule: [] })
    case 'wheelNarrow':
      return {
        ...job,
        station: { ...job.station, wheelWidthMm: Math.max(5, job.blade.widthMm * NARROW_SHARE) },
        motion: { ...job.motion, traverseMm: 0 },
      }
  }
}

/** Causes that a fixture can have at all. */
const needsStops: readonly EngineCause[] = ['stopLeftOpen', 'stopRightOpen', 'stopsShut', 'lash', 'fingersShort']

/** A third of the width counts as bare where its columns are, on average, bare over this share of what the barest third is. */
const BARE_SHARE = 0.45
/** Relief this far off what the healthy job leaves is seen (share), and no less than a leaf tells (mm). */
const SEEN_SHARE = 0.2
const SEEN_MM = 0.02
/** Less of the healthy relief than this is no curve. */
const NONE_SHARE = 0.2

const bareOf = (columns: readonly InkColumn[]): number =>
  columns.reduce((sum, { from, to }) => sum + (from === null || to === null ? 0 : to - from), 0) / columns.length

/** Where across the width the first ink goes. */
const acrossOf = (columns: readonly InkColumn[]): readonly Symptom[] => {
  const third = Math.floor(columns.length / 3)
  const parts = [columns.slice(0, third), columns.slice(third, -third), columns.slice(-third)].map(bareOf)
  const most = Math.max(...parts)
  const [left, middle, right] = parts.map((part) => part > BARE_SHARE * most) as [boolean, boolean, boolean]
  if (left && right && !middle) return ['inkCorners']
  if (middle && !left && !right) return ['inkMiddle']
  if (left && !right) return ['inkLeft']
  if (right && !left) return ['inkRight']
  return []
}

interface Relief {
  readonly leftMm: number
  readonly rightMm: number
}

/** How an edge's corners differ from what the healthy job leaves. */
const curveOf = (edge: Relief, healthy: Relief): readonly Symptom[] => {
  const mean = ({ leftMm, rightMm }: Relief) => (leftMm + rightMm) / 2
  const [now, meant] = [mean(edge), mean(healthy)]
  const seen = Math.max(SEEN_MM, SEEN_SHARE * meant)
  const lopsided = edge.leftMm - edge.rightMm - (healthy.leftMm - healthy.rightMm)
  const side: readonly Symptom[] = Math.abs(lopsided) < seen ? [] : [lopsided > 0 ? 'cornerLeft' : 'cornerRight']
  if (meant > SEEN_MM && now < NONE_SHARE * meant) return ['curveNone', ...side]
  if (meant - now > seen) return ['curveLess', ...side]
  if (now - meant > seen && side.length === 0) return ['curveMore']
  return side
}

/** What a faulty job would show, by the engine; null where it cannot be ground so. */
export const signatureOf = (job: Job, cause: EngineCause): readonly Symptom[] | null => {
  if (needsStops.includes(cause) && job.fixture.kind !== 'steered') return null
  const faulty = withFault(job, cause)
  const matching = withMatchingBevel(job)
  const healthyInk = firstInkOf(matching)
  const ink = firstInkOf(withFault(matching, cause))
  const healthy = quickGrind(job)
  const edge = quickGrind(faulty)
  if (!ink.ok || !healthyInk.ok || healthy === null || edge === null) return null
  const usual = new Set(acrossOf(healthyInk.value.columns))
  const along: readonly Symptom[] =
    ink.value.verdict === healthyInk.value.verdict
      ? []
      : ink.value.verdict === 'heelHigh'
        ? ['inkHeel']
        : ink.value.verdict === 'edgeHigh'
          ? ['inkEdge']
          : []
  const across = acrossOf(ink.value.columns).filter((symptom) => !usual.has(symptom))
  return [...along, ...across, ...curveOf(edge, healthy)]
}

/** What each cause would show on one job. */
export interface Signature {
  readonly cause: EngineCause | TradeCause
  readonly symptoms: readonly Symptom[]
  /** Found by grinding the job with this fault; else common practice. */
  readonly byEngine: boolean
}

/** @returns every cause that would show anything on this job */
export const signaturesOf = (job: Job): readonly Signature[] => {
  const engine = engineCauses.flatMap((cause): Signature[] => {
    const found = signatureOf(job, cause)
    return found === null || found.length === 0 ? [] : [{ cause, symptoms: found, byEngine: true }]
  })
  const trade = (Object.keys(tradeCauses) as TradeCause[]).map(
    (cause): Signature => ({ cause, symptoms: tradeCauses[cause], byEngine: false }),
  )
  return [...engine, ...trade]
}

/** A cause with how well it fits what was seen. */
export interface Suspect extends Signature {
  /** Of what was seen and what the cause would show, the share that is both, 0 to 1. */
  readonly fit: number
  /** 1 for the likeliest; equals share a rank. */
  readonly rank: number
}

/** @returns causes that show any of what was seen, best first */
export const suspectsOf = (signatures: readonly Signature[], seen: readonly Symptom[]): readonly Suspect[] => {
  const fits = signatures.flatMap((signature) => {
    const both = signature.symptoms.filter((symptom) => seen.includes(symptom)).length
    const either = new Set([...signature.symptoms, ...seen]).size
    return both === 0 ? [] : [{ ...signature, fit: both / either }]
  })
  const sorted = [...fits].sort((a, b) => b.fit - a.fit)
  return sorted.map((each) => ({ ...each, rank: 1 + sorted.filter(({ fit }) => fit > each.fit).length }))
}
