import { FEWEST_SAMPLES, MOST_SAMPLES } from './job.ts'
import type { Caution } from './report.ts'
import { failed, ok, type Problem, problem, type Result } from './result.ts'

/** Where the load stood at a moment, as a share of the reach: -1 left to +1 right. */
export interface TimedPlace {
  readonly timeS: number
  readonly place: number
}

/** A movement recorded by hand: places with their times, or places at equal steps of time. */
export type Recording = { readonly samples: readonly TimedPlace[] } | { readonly places: readonly number[] }

/** A path fit for `motion.recordedPath`. */
export interface RecordedPath {
  /** Places at equal steps of time. */
  readonly path: readonly number[]
  /** What was done to the recording that its maker should know; words under `caution.<code>`. */
  readonly notice: Caution | null
}

/**
 * Longest gap between samples (s). Between them the line is straight: a quick sweep of a second, end to end and bent like
 * a sinusoid, is then missed by (pi x 0.25)^2 / 8, 8 % of the reach at its turning point; beyond, the line would be invention.
 */
const MOST_GAP_S = 0.25
/** A place beyond the reach by no more than this is rounding. */
const ROUNDING = 1e-9

/** A sample's fault: its number is told counted from one, its path from nought as in a file. */
const fault = (code: string, list: string, k: number, field: string, params: Problem['params'] = {}) =>
  failed(problem(code, `${list}.${k}${field}`, { sample: k + 1, ...params }))

const wrongPlace = (place: number, list: string, k: number, field = '') => {
  if (!Number.isFinite(place)) return fault('recordedNotNumber', list, k, field)
  return Math.abs(place) > 1 + ROUNDING ? fault('recordedBeyondReach', list, k, field, { place }) : null
}

/** What is wrong with the time of a sample, or null. */
const wrongTime = (samples: readonly TimedPlace[], k: number) => {
  const { timeS } = samples[k] as TimedPlace
  if (!Number.isFinite(timeS)) return fault('recordedNotNumber', 'samples', k, '.timeS')
  const gapS = timeS - (samples[k - 1]?.timeS ?? timeS)
  if (gapS < 0) return fault('recordedTimeBack', 'samples', k, '.timeS')
  return gapS > MOST_GAP_S ? fault('recordedGap', 'samples', k, '.timeS', { gapS, mostS: MOST_GAP_S }) : null
}

const tooFew = (given: number, path: string): Problem | null =>
  given < FEWEST_SAMPLES ? problem('tooFew', path, { least: FEWEST_SAMPLES }) : null

const clipped = (place: number): number => Math.min(Math.max(place, -1), 1)

/**
 * Means of the line through the samples over equal steps of time. Means, not places picked out: what wears an edge is where
 * the load stands and for how long, and means keep that to the last sample, a tremor between two steps included. A
 * turning point loses (w h)^2 / 24 of a movement like sin(w t) over a step h, and can never be passed or missed by chance.
 */
const meansOver = (timeAt: (k: number) => number, placeAt: (k: number) => number, given: number, kept: number) => {
  const startS = timeAt(0)
  const stepS = (timeAt(given - 1) - startS) / kept
  let k = 0
  let beforeS = 0
  let areaS = 0
  /** Adds the line's area up to a time that lies in the piece from sample k to the next. */
  const areaUpTo = (untilS: number): void => {
    const [a, b] = [timeAt(k) - startS, timeAt(k + 1) - startS]
    if (untilS <= beforeS || b === a) return
    const middle = ((beforeS + untilS) / 2 - a) / (b - a)
    areaS += (placeAt(k) + (placeAt(k + 1) - placeAt(k)) * middle) * (untilS - beforeS)
    beforeS = untilS
  }
  return Array.from({ length: kept }, (_, step) => {
    const endS = (step + 1) * stepS
    areaS = 0
    for (; k < given - 2 && timeAt(k + 1) - startS < endS; k++) areaUpTo(timeAt(k + 1) - startS)
    areaUpTo(endS)
    return clipped(areaS / stepS)
  })
}

const noticeOf = (given: number, kept: number): Caution | null =>
  given > kept ? { code: 'recordingThinned', params: { given, kept } } : null

const ofPlaces = (places: readonly number[]): Result<RecordedPath> => {
  const few = tooFew(places.length, 'places')
  if (few !== null) return failed(few)
  for (const [k, place] of places.entries()) {
    const wrong = wrongPlace(place, 'places', k)
    if (wrong !== null) return wrong
  }
  const kept = Math.min(places.length, MOST_SAMPLES)
  const path =
    kept === places.length
      ? places.map(clipped)
      : meansOver(
          (k) => k,
          (k) => places[k] as number,
          places.length,
          kept,
        )
  return ok({ path, notice: noticeOf(places.length, kept) })
}

const ofSamples = (samples: readonly TimedPlace[]): Result<RecordedPath> => {
  const few = tooFew(samples.length, 'samples')
  if (few !== null) return failed(few)
  for (const [k, sample] of samples.entries()) {
    const wrong = wrongTime(samples, k) ?? wrongPlace(sample.place, 'samples', k, '.place')
    if (wrong !== null) return wrong
  }
  const at = (k: number): TimedPlace => samples[k] as TimedPlace
  if (at(samples.length - 1).timeS === at(0).timeS) return failed(problem('recordedNoTime', 'samples'))
  const kept = Math.min(samples.length, MOST_SAMPLES)
  const path = meansOver(
    (k) => at(k).timeS,
    (k) => at(k).place,
    samples.length,
    kept,
  )
  return ok({ path, notice: noticeOf(samples.length, kept) })
}

/**
 * The door for a movement recorded by hand. Refused, with the sample's number: what is no number, time going back, a gap in
 * time, a place beyond the reach; and fewer samples than make a movement. Samples come out at equal steps, as many as went
 * in; more than a job takes are thinned by means, and that is told.
 */
export const recordedPathOf = (recording: Recording): Result<RecordedPath> =>
  'samples' in recording ? ofSamples(recording.samples) : ofPlaces(recording.places)
