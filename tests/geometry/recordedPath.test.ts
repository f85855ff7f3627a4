import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { jobSchema, MOST_SAMPLES } from '../../geometry/job.ts'
import { type RecordedPath, type Recording, recordedPathOf, type TimedPlace } from '../../geometry/recordedPath.ts'
import { seeded } from '../support/seeded.ts'
import { exampleInput, found } from './example.ts'

const sine = (count: number, timeAt: (k: number) => number, omega: number): TimedPlace[] =>
  Array.from({ length: count }, (_, k) => ({ timeS: timeAt(k), place: Math.sin(omega * timeAt(k)) }))

const refusal = (recording: Recording) => {
  const result = recordedPathOf(recording)
  return result.ok ? null : result.problems[0]
}

const timed = (...pairs: readonly (readonly [number, number])[]): Recording => ({
  samples: pairs.map(([timeS, place]) => ({ timeS, place })),
})

/** Furthest that a path lies from sin(omega t) at the middles of its steps. */
const furthest = ({ path }: RecordedPath, startS: number, lengthS: number, omega: number): number => {
  const stepS = lengthS / path.length
  return path.reduce(
    (most, place, k) => Math.max(most, Math.abs(place - Math.sin(omega * (startS + (k + 0.5) * stepS)))),
    0,
  )
}

describe('a movement recorded by hand', () => {
  it('is taken as it is at equal steps, and fits the job', () => {
    const { path, notice } = found(recordedPathOf({ places: [0, 0.5, 1, 0, -1, -0.5] }))
    expect(path).toEqual([0, 0.5, 1, 0, -1, -0.5])
    expect(notice).toBeNull()
    const job = exampleInput({ motion: { path: 'recorded', recordedPath: [...path] } })
    expect(jobSchema.safeParse(job).success).toBe(true)
  })

  it('is brought to equal steps by means of its line: worked by hand', () => {
    // Line 0 -> 1 over 0.2 s, back to 0 over 0.1 s, on to 0 for 0.1 s: four steps of 0.1 s with means 1/4, 3/4, 1/2, 0.
    const { path } = found(recordedPathOf(timed([5, 0], [5.2, 1], [5.3, 0], [5.4, 0])))
    for (const [k, mean] of [0.25, 0.75, 0.5, 0].entries()) expect(path[k]).toBeCloseTo(mean, 12)
  })

  it('a sinusoid with unsteady times stays within (w gap)^2 / 8 of the line and (w step)^2 / 24 of the means (seed 7)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 50, max: 400 }), fc.integer({ min: 1, max: 1e6 }), (count, seed) => {
        const random = seeded(seed)
        const omega = Math.PI
        const times: number[] = [100]
        for (let k = 1; k < count; k++) times.push((times[k - 1] as number) + 0.005 + 0.06 * random())
        const lengthS = (times[count - 1] as number) - 100
        const kept = found(recordedPathOf({ samples: sine(count, (k) => times[k] as number, omega) }))
        const bound = (omega * 0.065) ** 2 / 8 + (omega * (lengthS / count)) ** 2 / 24
        expect(furthest(kept, 100, lengthS, omega)).toBeLessThan(bound)
      }),
      { seed: 7, numRuns: 100 },
    )
  })

  it('keeps its mean place and never passes its turning points', () => {
    const samples = sine(500, (k) => 0.02 * k, 2.2)
    const { path } = found(recordedPathOf({ samples }))
    const areas = samples.slice(1).map(({ place }, k) => (0.02 * (place + (samples[k] as TimedPlace).place)) / 2)
    const mean = areas.reduce((a, b) => a + b, 0) / (499 * 0.02)
    expect(path.reduce((a, b) => a + b, 0) / path.length).toBeCloseTo(mean, 12)
    expect(Math.max(...path)).toBeLessThanOrEqual(Math.max(...samples.map(({ place }) => place)))
  })

  it('a million samples are thinned to what a job takes, and that is told', () => {
    const samples = sine(1_000_000, (k) => k * 1e-4, 3)
    const kept = found(recordedPathOf({ samples }))
    expect(kept.path).toHaveLength(MOST_SAMPLES)
    expect(kept.notice).toEqual({ code: 'recordingThinned', params: { given: 1_000_000, kept: MOST_SAMPLES } })
    // Steps of 5 ms: (3 x 0.005)^2 / 24 is 9.4e-6, the line itself within (3e-4)^2 / 8.
    expect(furthest(kept, 0, 99.9999, 3)).toBeLessThan(9.4e-6 + 1.2e-8)
    const { path, notice } = found(recordedPathOf({ places: samples.map(({ place }) => place) }))
    expect(path).toHaveLength(MOST_SAMPLES)
    expect(notice?.params).toEqual({ given: 1_000_000, kept: MOST_SAMPLES })
  })

  it.each([
    ['what is no number', timed([0, 0], [0.1, Number.NaN], [0.2, 0], [0.3, 0]), 'recordedNotNumber', 'samples.1.place'],
    ['a time without end', timed([0, 0], [0.1, 0], [0.2, 0], [1 / 0, 0]), 'recordedNotNumber', 'samples.3.timeS'],
    ['time going back', timed([0, 0], [0.1, 0], [0.05, 0], [0.2, 0]), 'recordedTimeBack', 'samples.2.timeS'],
    ['a gap', timed([0, 0], [0.1, 0], [0.2, 0], [0.46, 0]), 'recordedGap', 'samples.3.timeS'],
    ['a place beyond the reach', { places: [0, 1, -1.01, 0] }, 'recordedBeyondReach', 'places.2'],
    ['too few', { places: [0, 1, -1] }, 'tooFew', 'places'],
    ['none', { samples: [] }, 'tooFew', 'samples'],
    ['no time at all', timed([1, 0], [1, 1], [1, 0], [1, 0]), 'recordedNoTime', 'samples'],
  ] as const)('refuses %s, with its place', (_, recording, code, path) => {
    expect(refusal(recording)).toMatchObject({ code, path })
  })

  it('names the limit of a gap', () => {
    const params = refusal(timed([0, 0], [0.1, 0], [0.2, 0], [0.7, 0]))?.params
    expect(params?.mostS).toBe(0.25)
    expect(params?.gapS).toBeCloseTo(0.5, 12)
  })
})
