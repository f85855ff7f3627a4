import { describe, expect, it } from 'vitest'
import { camberOfShavings, fitPoints } from '../../geometry/measurePoints.ts'
import { found } from './example.ts'

const PLACES = [-28, -20, -10, 0, 10, 20, 28]
const gaps = (rise: (u: number) => number) => PLACES.map((uMm) => ({ uMm, gapMm: 0.3 + 0.005 * uMm + rise(uMm) }))

describe('more points under a tilted straightedge', () => {
  it('an arc of 0.5 mm on 57 mm comes back whole', () => {
    const edge = found(
      fitPoints(
        gaps((u) => (0.5 * u * u) / 28.5 ** 2),
        57,
      ),
    )
    expect(edge.shape).toBe('arc')
    expect(edge.reliefMm).toBeCloseTo(0.5, 12)
    expect(edge.otherResidualSdMm).toBeGreaterThan(0.01)
  })

  it('a soft roof, 0.47 of its corner halfway out, is called one', () => {
    const soft = (u: number) => Math.sqrt((u / 28.5) ** 2 + 0.0624 ** 2) - 0.0624
    expect(soft(14.25) / soft(28.5)).toBeCloseTo(0.47, 3)
    const edge = found(
      fitPoints(
        gaps((u) => (0.5 * soft(u)) / soft(28.5)),
        57,
      ),
    )
    expect([edge.shape, edge.reliefMm.toFixed(6)]).toEqual(['roof', '0.500000'])
  })

  it('two places tell nothing, a place off the iron is refused', () => {
    const codeOf = (points: Parameters<typeof fitPoints>[0]) => {
      const fit = fitPoints(points, 57)
      return fit.ok ? null : fit.problems[0]?.code
    }
    expect(
      codeOf([
        { uMm: 0, gapMm: 0 },
        { uMm: 9, gapMm: 1 },
      ]),
    ).toBe('fitSingular')
    expect(codeOf([{ uMm: 29, gapMm: 0 }])).toBe('pointBeyondEdge')
  })
})

describe('three shavings', () => {
  it('0.02, 0.05, 0.04 at half the half width: camber 0.02, x 4 = 0.08 at the corners, / sin 30 = 0.16 in the back', () => {
    const wood = found(camberOfShavings({ leftMm: 0.02, middleMm: 0.05, rightMm: 0.04, outMm: 14.25 }, 57, 30))
    expect(wood.camberMm).toBeCloseTo(0.02, 12)
    expect(wood.woodReliefMm).toBeCloseTo(0.08, 12)
    expect(wood.reliefMm).toBeCloseTo(0.16, 12)
  })
})
