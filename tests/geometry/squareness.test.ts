import { describe, expect, it } from 'vitest'
import {
  bothSides,
  type Cause,
  explainSkew,
  playForSkew,
  type SquareReading,
  skewError,
  skewOfGap,
  skewPer,
  usualSizes,
} from '../../geometry/squareness.ts'
import { seeded } from '../support/seeded.ts'
import { type Changes, edgeOfState, exampleJob, found, ground } from './example.ts'

const at = (changes: Partial<SquareReading> = {}): SquareReading => ({
  skewDeg: 0,
  errorDeg: 0.03,
  bevelDeg: 25,
  wheelWidthMm: 80,
  unequalPlayMm: 0,
  guideArmMm: 75,
  clamping: 1,
  ...changes,
})

describe('a square on an edge', () => {
  it('0.2 mm of light at 50 mm is 0.2292 degrees, known to 0.02 / 50 = 0.0229', () => {
    expect(skewOfGap(0.2, 50)).toBeCloseTo(0.22918, 5)
    expect(skewError(50)).toBeCloseTo(0.02292, 5)
  })

  it('from both sides the taper of the sides falls out: 0.3 and 0.1 are 0.2 of skew, and sides 0.2 off parallel', () => {
    expect(bothSides(0.3, 0.1)).toEqual({ skewDeg: expect.closeTo(0.2, 12), taperDeg: expect.closeTo(0.2, 12) })
  })
})

describe('slopes, against the contact grind', () => {
  const skewOf = (changes: Changes) =>
    edgeOfState(
      ground(
        exampleJob({
          grid: { across: 29, through: 7 },
          fixture: { kind: 'square' },
          station: { wheelWidthMm: 80 },
          ...changes,
          motion: { sweeps: 300, traverseMm: 0, ...changes.motion },
        }),
      ),
    ).skewDeg

  it.each([
    ['mounting', { errors: { mountingAskewDeg: 0.4 } }, 0.4],
    ['barAskew', { errors: { barAskewDeg: 0.4 } }, 0.4],
    ['barRoll', { errors: { barRollDeg: 0.2 } }, 0.2],
    ['wheelCone', { errors: { wheelConeMm: 0.03 } }, 0.03],
  ] as const)('%s', (cause, changes, size) => {
    const expected = skewPer(cause, at()) * size
    expect(skewOf(changes) / expected).toBeCloseTo(1, 1)
  })

  it('stops: 0.4 mm more on the right than on the left turns the formed edge by most of 0.4 / (2 x 75)', () => {
    const turned = skewOf({
      fixture: { kind: 'steered' },
      motion: { stopTurnsLeft: 1, stopTurnsRight: 1.5, traverseMm: 10, sweeps: 900 },
    })
    const expected = skewPer('stops', at()) * 0.4
    expect(turned / expected).toBeGreaterThan(0.8)
    expect(turned / expected).toBeLessThan(1.1)
  })

  it('free play for a turn goes back: 0.2 degrees at an arm of 75 mm is 2 x 75 x tan 0.2 = 0.5236 mm', () => {
    expect(playForSkew(0.2, 75)).toBeCloseTo(0.5236, 4)
    expect(skewPer('stops', at()) * playForSkew(0.2, 75)).toBeCloseTo(0.2, 4)
  })
})

describe('run backwards', () => {
  const named = (readings: readonly SquareReading[]) => found(explainSkew(readings))
  const likelihoodOf = (readings: readonly SquareReading[], cause: Cause) =>
    named(readings).explanations.find((each) => each.cause === cause)?.likelihood ?? 0

  it('one reading leaves everything open, and says what cannot be told apart', () => {
    const { explanations, alike, contradict } = named([at({ skewDeg: 0.2 })])
    expect(explanations).toHaveLength(5)
    expect(alike).toEqual([['mounting', 'barAskew', 'barRoll', 'wheelCone', 'stops']])
    expect(contradict).toBe(false)
    expect(explanations.reduce((sum, { likelihood }) => sum + likelihood, 0)).toBeCloseTo(1, 12)
  })

  it('clamped anew and square this time: it was the mounting', () => {
    const readings = [at({ skewDeg: 0.25 }), at({ skewDeg: 0.01, clamping: 2 })]
    const { explanations, alike } = named(readings)
    expect(explanations[0]?.cause).toBe('mounting')
    expect(alike.flat()).not.toContain('mounting')
  })

  it('clamped anew three times and askew alike each time: it was not', () => {
    const readings = [1, 2, 3].map((clamping) => at({ skewDeg: 0.2 + clamping * 0.005, clamping }))
    expect(likelihoodOf(readings, 'mounting')).toBeLessThan(0.2)
  })

  it('askew less at a blunter bevel tells a roll from the rest', () => {
    const rolled = (bevelDeg: number) => at({ bevelDeg, skewDeg: 0.12 / Math.tan((bevelDeg * Math.PI) / 180) })
    expect(named([rolled(20), rolled(45)]).explanations[0]?.cause).toBe('barRoll')
  })

  it('a fixture without stops cannot blame them; readings that no cause joins contradict each other', () => {
    expect(named([at({ skewDeg: 0.1, guideArmMm: null })]).explanations.map(({ cause }) => cause)).not.toContain(
      'stops',
    )
    const readings = [at({ skewDeg: 0.6 }), at({ skewDeg: -0.6 })]
    expect(named(readings).contradict).toBe(true)
  })
})

describe('recovery over 1,000 benches, seed 11', () => {
  const random = seeded(11)
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  /** Two irons at bevels of 20 and 45 degrees, each clamped twice, a tenth of the usual noise. */
  const readingsOf = (cause: Cause, size: number): SquareReading[] =>
    [20, 20, 45, 45].map((bevelDeg, k) => {
      const reading = at({ bevelDeg, clamping: k + 1 })
      return { ...reading, skewDeg: skewPer(cause, reading) * size + 0.03 * normal() }
    })

  it.each(['barAskew', 'barRoll'] as const)(
    '%s comes back without bias, and first or beside what cannot be told from it',
    (cause) => {
      const size = 2 * usualSizes[cause]
      const runs = Array.from({ length: 500 }, () => found(explainSkew(readingsOf(cause, size))))
      const sizes = runs.map(({ explanations }) => explanations.find((each) => each.cause === cause)?.size ?? 0)
      const mean = sizes.reduce((sum, each) => sum + each, 0) / sizes.length
      const sd = Math.sqrt(sizes.reduce((sum, each) => sum + (each - mean) ** 2, 0) / sizes.length)
      // The usual size pulls it towards 0 by a few hundredths.
      expect(Math.abs(mean / size - 1)).toBeLessThan(0.06)
      expect(sd).toBeLessThan(0.1 * size)
      const first = runs.filter(({ explanations, alike }) => {
        const best = explanations[0]?.cause as Cause
        return best === cause || alike.some((group) => group.includes(best) && group.includes(cause))
      })
      expect(first.length / runs.length).toBeGreaterThan(0.9)
    },
  )
})
