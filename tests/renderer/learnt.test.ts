import { describe, expect, it } from 'vitest'
import type { Learnt, LearntGrind } from '../../main/contract/learnt.ts'
import { plotLayout } from '../../renderer/learnt/plotLayout.ts'
import { playInUse, verdictAt } from '../../renderer/learnt/verdict.ts'
import { exampleJob } from '../geometry/example.ts'

const grind = (freePlayMm: number, standing: LearntGrind['standing'] = 'used'): LearntGrind => ({
  lineId: '00000000-0000-4000-8000-000000000001',
  version: 1,
  toolCode: '01',
  toolName: 'Try plane iron',
  at: '2026-01-05T08:00:00.000Z',
  freePlayMm,
  modelReliefMm: 0.3 * freePlayMm,
  measuredReliefMm: 0.3 * freePlayMm,
  residualMm: 0,
  standing,
})

const CALIBRATION: Learnt['calibration'] = {
  scale: 1.2,
  lashMm: 0.2,
  scaleSe: 0.1,
  lashSe: 0.1,
  scaleLashCorrelation: -0.8,
  grinds: 4,
  repeatabilityMm: 0.02,
}

const learnt = (changes: Partial<Learnt['calibration']> = {}, plays = [0.8, 0.8, 1.2, 1.6]): Learnt => ({
  grinds: plays.map((play) => grind(play)),
  calibration: { ...CALIBRATION, ...changes },
  before: null,
  code: 'learnt',
})

describe('the plot of what a fixture has learnt', () => {
  it('the band is two standard errors wide either way, scale and lash taken together', () => {
    const { band, model, zero } = plotLayout(learnt(), 700, 400)
    // Both axes reach 1.1 x 1.6 = 1.76 mm; there (1.96 x 0.1)^2 + 0.12^2 - 2 x 0.8 x 0.196 x 0.12 = 0.0151840.
    const pxPerMm = (zero[1] - model[1][1]) / 1.76
    const upper = band[24] as readonly [number, number]
    const lower = band[25] as readonly [number, number]
    expect((lower[1] - upper[1]) / pxPerMm).toBeCloseTo(4 * Math.sqrt(0.015184), 9)
  })
})

describe('the lash on the plot', () => {
  it('lies from where the fixture grinds no curve to 0, inside the paper however great', () => {
    for (const lashMm of [0.2, 1.5, -0.1]) {
      const { lash, calibrated, zero } = plotLayout(learnt({ lashMm }), 320, 300)
      expect([lash.fromPx, lash.toPx]).toEqual([calibrated[0][0], zero[0]])
      expect(lash.fromPx).toBeGreaterThanOrEqual(56)
      expect(Math.sign(lash.toPx - lash.fromPx)).toBe(Math.sign(lashMm))
    }
  })
})

describe('what is said of a fixture', () => {
  it('speaks of scale and lash together: 0.9 x (1 + 0.2 / 0.8) is 12.5 % more, and at 2.5 mm 2.8 % less', () => {
    const at = (play: number) => verdictAt(learnt({ scale: 0.9 }), play)
    expect(at(0.8)).toMatchObject({ side: 'more', byShare: expect.closeTo(0.125, 12) })
    expect(at(2.5)).toMatchObject({ side: 'less', byShare: expect.closeTo(0.028, 12) })
    expect(at(1.8).side).toBe('as')
  })

  it('its doubt is that of both together, by hand at 1 mm: sqrt(0.12^2 + 0.12^2 - 2 x 0.8 x 0.12^2)', () => {
    expect(verdictAt(learnt(), 1).errorShare).toBeCloseTo(Math.sqrt(0.00576), 12)
  })

  it('tells from which side to which the newest grind moved it, by the ratio', () => {
    const moved = (from: number, to: number, lashMm = 0) =>
      verdictAt({ ...learnt({ scale: to, lashMm }), before: { ...CALIBRATION, scale: from, lashMm: 0 } }, 0.8).moved
    expect(moved(0.95, 1.05)).toEqual({ key: 'lessToMore', fromShare: expect.closeTo(0.05, 12) })
    expect(moved(1.05, 0.95)?.key).toBe('moreToLess')
    expect(moved(1, 1.05)?.key).toBe('asToMore')
    expect(moved(0.9, 0.95)?.key).toBe('lessToLess')
    expect(moved(1, 1.02)).toBeNull()
    // Scale down a ninth, lash up by as much: nothing moved at this free play.
    expect(moved(1, 0.9, 0.8 / 9)).toBeNull()
    const before = { ...CALIBRATION, scale: 0.9, lashMm: 0.8 / 9 }
    expect(verdictAt({ ...learnt({ scale: 1, lashMm: 0 }), before }, 0.8).moved).toBeNull()
    expect(verdictAt(learnt(), 0.8).moved).toBeNull()
  })

  it("speaks at the job's free play, two turns of 0.8; else at the middle of the grinds used; else not at all", () => {
    const { grinds } = learnt({}, [0.4, 0.8, 2])
    const closed = exampleJob({ motion: { stopTurnsLeft: 0, stopTurnsRight: 0 } })
    expect(playInUse(exampleJob(), grinds)).toBeCloseTo(1.6, 12)
    expect(playInUse(closed, grinds)).toBe(0.8)
    expect(playInUse(closed, [grind(3, 'outlier'), ...grinds])).toBe(0.8)
    expect(playInUse(closed, [])).toBeNull()
  })
})
