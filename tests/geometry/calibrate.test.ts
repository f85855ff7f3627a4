import { describe, expect, it } from 'vitest'
import { calibrate, type Grind } from '../../geometry/calibrate.ts'
import {
  calibratedError,
  calibratedFreePlay,
  calibratedRelief,
  ratioError,
  shownPlayError,
} from '../../geometry/calibrated.ts'
import { calibratedTurns } from '../../geometry/turns.ts'
import { seeded } from '../support/seeded.ts'
import { exampleJob, found } from './example.ts'

/** The example's model: 0.262 mm at one turn of 0.8 mm, proportional (geometry/MODEL.md). */
const MODEL_PER_PLAY = 0.262 / 0.8

const grind = (freePlayMm: number, measuredReliefMm: number): Grind => ({
  freePlayLeftMm: freePlayMm,
  freePlayRightMm: freePlayMm,
  modelReliefMm: MODEL_PER_PLAY * freePlayMm,
  measuredReliefMm,
  date: '2026-01-01',
})
const truth = (play: number, scale: number, lashMm: number): number => scale * MODEL_PER_PLAY * (play + lashMm)

const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())
const PLAYS = [0.4, 0.4, 0.8, 0.8, 1.2, 1.2, 1.6, 1.6, 2, 2, 0.6, 1]

const SURE = {
  scale: 1,
  lashMm: 0,
  scaleSe: 0,
  lashSe: 0,
  scaleLashCorrelation: 0,
  grinds: 5,
  repeatabilityMm: 0,
}

describe('calibration', () => {
  it('without a grind it is the model with the prior as its doubt', () => {
    const none = found(calibrate([]))
    expect([none.scale, none.grinds, none.code]).toEqual([1, 0, 'tooFewGrinds'])
    expect(none.lashMm).toBeCloseTo(0, 12)
    expect(none.scaleSe).toBeCloseTo(0.15, 12)
    expect(none.lashSe).toBeCloseTo(0.1, 12)
  })

  it('one grind a fifth over the model moves it part of the way and says so', () => {
    const one = found(calibrate([grind(0.8, 0.262 * 1.2)]))
    expect(one.code).toBe('tooFewGrinds')
    const relief = calibratedRelief(one, 0.262, 0.8)
    expect(relief).toBeGreaterThan(0.262)
    expect(relief).toBeLessThan(0.262 * 1.2)
  })

  it('scale 1.1 and lash 0.08 by hand: 1 mm by the model is 1 / 1.1 - 0.08 = 0.829091 mm of free play', () => {
    const learnt = { ...SURE, scale: 1.1, lashMm: 0.08 }
    const play = calibratedFreePlay(learnt, 1)
    expect(play).toBeCloseTo(0.829091, 6)
    expect(calibratedRelief(learnt, MODEL_PER_PLAY * play, play)).toBeCloseTo(MODEL_PER_PLAY, 12)
  })

  it('errors by hand: scale 1.2 +- 0.1, lash 0.2 +- 0.1 mm, correlation -0.8, at 1 mm of free play', () => {
    const learnt = { ...SURE, scale: 1.2, lashMm: 0.2, scaleSe: 0.1, lashSe: 0.1, scaleLashCorrelation: -0.8 }
    // 1.2 x 0.1 of either; 0.12^2 x (1 + 1 - 2 x 0.8) = 0.00576, and with 0.05 of one grind's own 0.25 x 0.00576 + 0.0025.
    expect(ratioError(learnt, 1)).toBeCloseTo(Math.sqrt(0.00576), 12)
    expect(calibratedError({ ...learnt, repeatabilityMm: 0.05 }, 0.5, 1)).toBeCloseTo(Math.sqrt(0.00394), 12)
    // At no free play the scale's error comes through the lash: 0.02^2 + 0.12^2 - 2 x 0.8 x 0.02 x 0.12.
    expect(shownPlayError(learnt, 0)).toBeCloseTo(Math.sqrt(0.01096), 12)
    expect(shownPlayError({ ...learnt, scaleLashCorrelation: -1 }, 1)).toBeCloseTo(0, 12)
  })

  it('four grinds at one setting tell the ratio there well, though scale and lash stay doubtful', () => {
    const learnt = found(calibrate([0.8, 0.8, 0.8, 0.8].map((play) => grind(play, truth(play, 1, 0)))))
    // Prior of the ratio 0.15^2 + (0.1 / 0.8)^2 = 0.038125; spread 0.02 x sqrt(2 / 4), so four readings 0.0002 / 0.262^2 / 4 =
    // 0.00072840; together 1 / (1 / 0.038125 + 1 / 0.0007284) = 0.00071474, whose root is 0.026735.
    expect(ratioError(learnt, 0.8)).toBeCloseTo(0.026735, 6)
    // sqrt((0.262 x 0.026735)^2 + 0.0002)
    expect(calibratedError(learnt, 0.262, 0.8)).toBeCloseTo(0.015782, 6)
    // Scale alone 0.0225 - 0.0225^2 / 0.0388534 = 0.0094702, lash 0.01 - 0.0125^2 / 0.0388534 = 0.0059784.
    expect([learnt.scaleSe, learnt.lashSe]).toEqual([expect.closeTo(0.097315, 5), expect.closeTo(0.07732, 5)])
    expect(learnt.scaleLashCorrelation).toBeLessThan(-0.9)
    const apart = { ...learnt, scaleLashCorrelation: 0 }
    expect(ratioError(apart, 0.8) / ratioError(learnt, 0.8)).toBeGreaterThan(3)
  })

  it('a job file older than the correlation has none', () => {
    const calibration = { scale: 1.1, lashMm: 0.05, scaleSe: 0.1, lashSe: 0.1, grinds: 4 }
    expect(exampleJob({ fixture: { calibration } }).fixture.calibration?.scaleLashCorrelation).toBe(0)
  })

  it('one reading written double is shown as an outlier and moves nothing', () => {
    const good = PLAYS.slice(0, 6).map((play, i) => grind(play, truth(play, 1.05, 0.05) + (i % 2 ? 0.004 : -0.004)))
    const before = found(calibrate(good))
    const after = found(calibrate([...good, grind(1.2, 2 * truth(1.2, 1.05, 0.05))]))
    expect(after.outliers).toEqual([false, false, false, false, false, false, true])
    expect(after.scale).toBeCloseTo(before.scale, 12)
    expect(after.residualsMm[6]).toBeGreaterThan(0.3)
  })

  it('a grind left out by the user does not count', () => {
    const good = PLAYS.map((play) => grind(play, truth(play, 1, 0)))
    expect(found(calibrate([...good, { ...grind(1, 0.4), excluded: true }])).grinds).toBe(PLAYS.length)
  })
})

describe('grinds that contradict each other', () => {
  const at = (shares: readonly number[], play = 0.8) =>
    found(calibrate(shares.map((share) => grind(play, share * MODEL_PER_PLAY * play)))).code

  it('0.6, 1 and 1.6 of the model at one setting teach nothing, nor do two camps of three', () => {
    expect(at([0.6, 1, 1.6])).toBe('contradict')
    expect(at([0.6, 1, 1.6], 2)).toBe('contradict')
    expect(at([1, 1, 1, 1.8, 1.8, 1.8])).toBe('contradict')
  })

  it('what leaves can misread does not, nor a fixture far from the model whose grinds agree, nor one bad reading', () => {
    // At 0.15 mm of free play the model says 0.049 mm: 0.03, 0.05 and 0.08 are a leaf or two apart.
    expect(at([0.6, 1, 1.6], 0.15)).toBe('learnt')
    expect(at([1.6, 1.62, 1.58])).toBe('learnt')
    expect(at([1, 1.02, 0.98, 2])).toBe('learnt')
    expect(at([0.6, 1.6])).toBe('tooFewGrinds')
  })

  it('of 1,000 honest histories of three at one setting, spread 0.02 mm, seed 11, fewer than 2 in 100 are said to', () => {
    const random = seeded(11)
    const codes = Array.from({ length: 1000 }, () => at([1, 1, 1].map((one) => one + (0.02 / 0.262) * normal(random))))
    expect(codes.filter((code) => code === 'contradict').length).toBeLessThan(20)
  })
})

/** Twelve good grinds, a reading written double and a wild one left out by the user, each at a place of its own. */
const history = (random: () => number, scale: number, lashMm: number) => {
  const all = PLAYS.map((play) => grind(play, truth(play, scale, lashMm) + 0.02 * normal(random)))
  const play = 0.8 + 1.2 * random()
  const double = grind(play, 2 * truth(play, scale, lashMm))
  all.splice(Math.floor(random() * all.length), 0, double)
  all.splice(Math.floor(random() * all.length), 0, { ...grind(1, random()), excluded: true })
  return { all, double }
}

describe('recovery over 1,000 histories of 12 grinds, an outlier and an excluded one, spread 0.02 mm, seed 7', () => {
  it.each([
    [1, 0],
    [1.1, 0.08],
    [0.85, -0.05],
  ])('scale %f, lash %f mm: bias under half a standard error, spread as told, the double found', (scale, lashMm) => {
    const random = seeded(7)
    const runs = Array.from({ length: 1000 }, () => {
      const { all, double } = history(random, scale, lashMm)
      const run = found(calibrate(all))
      return { ...run, caught: run.outliers[all.indexOf(double)] === true }
    })
    const mean = (of: (run: (typeof runs)[number]) => number) =>
      runs.reduce((sum, run) => sum + of(run), 0) / runs.length
    for (const key of ['scale', 'lashMm'] as const) {
      const average = mean((run) => run[key])
      const spread = Math.sqrt(mean((run) => (run[key] - average) ** 2))
      const told = mean((run) => run[key === 'scale' ? 'scaleSe' : 'lashSe'])
      expect(Math.abs(average - (key === 'scale' ? scale : lashMm))).toBeLessThan(0.5 * told)
      expect(spread / told).toBeGreaterThan(0.6)
      expect(spread / told).toBeLessThan(1.2)
    }
    expect(runs.every(({ code, caught }) => code === 'learnt' && caught)).toBe(true)
    expect(mean(({ grinds }) => grinds)).toBeGreaterThan(11.9)
  })
})

describe('turns by a calibration', () => {
  const byModel = { left: 2, right: 1, reachable: true, code: 'reachable' } as const
  const job = (scale: number, lashMm: number) =>
    exampleJob({ fixture: { calibration: { scale, lashMm, scaleSe: 0.03, lashSe: 0.03, grinds: 8 } } })

  it('scale 1.25, lash 0.08 mm, pitch 0.8: 2 / 1.25 - 0.1 = 1.5 turns and 1 / 1.25 - 0.1 = 0.7', () => {
    const turns = calibratedTurns(job(1.25, 0.08), byModel)
    expect(turns?.left).toBeCloseTo(1.5, 12)
    expect(turns?.right).toBeCloseTo(0.7, 12)
    expect(turns?.code).toBe('reachable')
  })

  it('beyond the screws it says so; without a calibration there are none', () => {
    expect(calibratedTurns(job(0.3, 0), { ...byModel, left: 11 })?.code).toBe('beyondStopTravel')
    expect(calibratedTurns(exampleJob(), byModel)).toBeNull()
  })
})
