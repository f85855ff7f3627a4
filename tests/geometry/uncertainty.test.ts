import { describe, expect, it } from 'vitest'
import type { Job } from '../../geometry/job.ts'
import { asSet, doubtsOf, type Input } from '../../geometry/measured.ts'
import { quickGrind } from '../../geometry/quickGrind.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { uncertaintyOf } from '../../geometry/uncertainty.ts'
import { degFromRad } from '../../geometry/units.ts'
import { seeded } from '../support/seeded.ts'
import { type Changes, edgeOfState, exampleJob, found, ground } from './example.ts'

const EXACT = Object.fromEntries(Object.keys(exampleJob().tolerances).map((input) => [input, 0])) as Job['tolerances']

const jobWith = (tolerances: Partial<Job['tolerances']>, changes: Changes = {}): Job => {
  const job = exampleJob(changes)
  return { ...job, tolerances: { ...EXACT, ...tolerances } }
}

const of = (job: Job) => uncertaintyOf(job, found(setUpOf(job)))

describe('the bevel', () => {
  // Example of the design: R 125, P 130, o 15, b 25 deg. Slopes in deg/mm by hand: dP -0.67495, bar 0.76631, o 0.363; a wheel
  // measured wrong takes the bar with it, because the bar is set by its gap: 0.0761.
  it.each<readonly [Input, number, number]>([
    ['projectionMm', 0.67495, 4],
    ['barMm', 0.76631, 4],
    ['seatOffsetMm', 0.363, 3],
    ['wheelDiameterMm', 0.0761, 4],
    ['mountingAskewDeg', 0, 12],
  ])('a tenth of %s moves it by its slope', (input, slope, decimals) => {
    const report = of(jobWith({ [input]: 0.1 }))
    expect(10 * (report.bevelAngleDeg as number)).toBeCloseTo(slope, decimals)
    expect(report.parts.map((part) => part.input)).toEqual([input])
  })

  it('by all together: squares add', () => {
    const report = of(jobWith({ projectionMm: 0.3, barMm: 0.2 }))
    expect(report.bevelAngleDeg).toBeCloseTo(Math.hypot(0.3 * 0.67495, 0.2 * 0.76631), 4)
    expect(report.parts).toHaveLength(2)
  })

  it('hangs on the triangle alone, not on which two of it were given: the third is set by measuring too', () => {
    const tolerances = { projectionMm: 0.3, barMm: 0.2, seatOffsetMm: 0.3, wheelDiameterMm: 0.3 }
    const given = of(jobWith(tolerances)).bevelAngleDeg as number
    const { barDistanceMm } = found(setUpOf(exampleJob()))
    for (const aim of [
      { bevelAngleDeg: null, barDistanceMm },
      { projectionMm: null, barDistanceMm },
    ])
      expect(of(jobWith(tolerances, { aim })).bevelAngleDeg).toBeCloseTo(given, 9)
  })

  it('agrees with 4,000 draws (seed 5) within 3.4 %: three times their sampling error of 1 / sqrt(8,000)', () => {
    const job = exampleJob()
    const drawn = deviationOf(draws(job, 4000, 5).map((one) => degFromRad(found(setUpOf(one)).bevelRad)))
    expect(Math.abs(drawn / (of(job).bevelAngleDeg as number) - 1)).toBeLessThan(0.034)
  })
})

/** Jobs with all inputs off together, each by a normal draw (Box and Muller, 1958). */
const draws = (job: Job, count: number, seed: number): readonly Job[] => {
  const random = seeded(seed)
  const normal = () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
  const set = asSet(job, found(setUpOf(job)))
  const shifts = doubtsOf(set).flatMap((doubt) => doubt.shifts.map((shift) => ({ shift, deviation: doubt.deviation })))
  return Array.from({ length: count }, () =>
    shifts.reduce((one, { shift, deviation }) => shift(one, deviation * normal()), set),
  )
}

const deviationOf = (values: readonly number[]): number => {
  const mean = values.reduce((a, b) => a + b, 0) / values.length
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1))
}

describe('the relief', () => {
  it('agrees with 300 draws (seed 8) within 13 %: three times their sampling error of 1 / sqrt(600), bent slopes left in it', () => {
    const job = exampleJob()
    const edges = draws(job, 300, 8).map((one) => quickGrind(one) ?? { leftMm: Number.NaN, rightMm: Number.NaN })
    const { reliefLeftMm, reliefRightMm, skewDeg } = of(job)
    const skews = edges.map(({ leftMm, rightMm }) => degFromRad((rightMm - leftMm) / 57))
    for (const [drawn, reported] of [
      [edges.map(({ leftMm }) => leftMm), reliefLeftMm],
      [edges.map(({ rightMm }) => rightMm), reliefRightMm],
      [skews, skewDeg],
    ] as const)
      expect(Math.abs(deviationOf(drawn) / (reported as number) - 1)).toBeLessThan(0.13)
  })

  it.each<readonly [Input, number]>([
    ['fingerReachMm', 1],
    ['removalShare', 0.2],
    ['mountingAskewDeg', 0.1],
    ['projectionMm', 0.3],
  ])('a quick grind feels %s as the whole grind does, within a quarter', (input, by) => {
    const set = asSet(exampleJob(), found(setUpOf(exampleJob())))
    const [doubt] = doubtsOf(set).filter((one) => one.input === input)
    const shift = doubt?.shifts[0] as NonNullable<typeof doubt>['shifts'][0]
    const [more, less] = [shift(set, by), shift(set, -by)]
    const whole = edgeOfState(ground(more)).reliefLeftMm - edgeOfState(ground(less)).reliefLeftMm
    const quick = (quickGrind(more)?.leftMm ?? Number.NaN) - (quickGrind(less)?.leftMm ?? Number.NaN)
    expect(Math.abs(quick / whole - 1)).toBeLessThan(0.25)
  })

  it('each stop moves its own corner; both sides carry as much of the whole', () => {
    const { reliefLeftMm, reliefRightMm, parts } = of(jobWith({ stopTurns: 0.05 }))
    expect((reliefLeftMm as number) / (reliefRightMm as number)).toBeCloseTo(1, 0)
    // Two independent corners: their mean is known better than either, by a root of two.
    expect(((reliefLeftMm as number) / (parts[0]?.reliefMm as number)) ** 2).toBeGreaterThan(1.5)
  })
})

describe('what counts', () => {
  it('nothing where everything is exact', () => {
    expect(of(jobWith({}))).toEqual({ bevelAngleDeg: 0, reliefLeftMm: 0, reliefRightMm: 0, skewDeg: 0, parts: [] })
  })

  it.each<readonly [string, Changes, readonly string[]]>([
    ['a steered fixture', {}, ['guideArmMm', 'stopTurns', 'fingerReachMm']],
    ['a square one', { fixture: { kind: 'square' } }, ['fingerReachMm']],
    ['a rocking one', { fixture: { kind: 'rocking' }, motion: { rollLeftDeg: 1 } }, ['stopAngleDeg', 'fingerReachMm']],
    ['a swing', { fixture: { kind: 'swing', swingRadiusMm: 200 }, motion: { yawLeftDeg: 2 } }, ['stopAngleDeg']],
  ])('of stops and fingers, on %s', (_, changes, inputs) => {
    const found = of(jobWith({ guideArmMm: 1, stopTurns: 0.1, stopAngleDeg: 0.1, fingerReachMm: 1 }, changes))
    expect(found.parts.map((part) => part.input)).toEqual(inputs)
  })

  it('a way that leads nowhere is left out: a bar that would touch the blade one way', () => {
    // The bar's radius 6 and the thickness 3.2 leave it just clear of the blade at 9.2.
    const report = of(jobWith({ seatOffsetMm: 0.3 }, { fixture: { seatOffsetMm: 9.2 } }))
    expect(report.reliefLeftMm).toBeGreaterThan(0)
  })
})
