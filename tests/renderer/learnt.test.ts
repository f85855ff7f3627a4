import { describe, expect, it } from 'vitest'
import type { Learnt, LearntGrind } from '../../main/contract/learnt.ts'
import { plotLayout } from '../../renderer/learnt/plotLayout.ts'

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
