import { describe, expect, it } from 'vitest'
import { camberOfShavings, fitPoints, readPoints, readShavings } from '../../geometry/measurePoints.ts'
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

describe('points as an edge', () => {
  it('an arc read to 0.02 mm: relief, shape, radius 28.5^2 / (2 x 0.5) + 0.25, and gaps as if the straightedge had lain level', () => {
    const { edge, levelled } = found(
      readPoints(
        gaps((u) => (0.5 * u * u) / 28.5 ** 2),
        57,
        0.02,
      ),
    )
    expect([edge.shape, edge.reliefMm.toFixed(6), edge.radiusMm?.toFixed(2)]).toEqual(['arc', '0.500000', '812.50'])
    expect(levelled[3]?.gapMm).toBeCloseTo(0, 9)
    expect(edge.standardErrorMm).toBeGreaterThan(0.02 / Math.sqrt(12) / Math.sqrt(PLACES.length))
    expect(edge.notices).toEqual([])
  })

  it('three places tell the relief as an arc, not the shape', () => {
    const three = [-28.5, 0, 28.5].map((uMm) => ({ uMm, gapMm: uMm === 0 ? 0 : 0.4 }))
    const { edge } = found(readPoints(three, 57, 0.02))
    expect([edge.shape, edge.reliefMm.toFixed(6)]).toEqual([null, '0.400000'])
  })

  it('a hollow edge is refused, points that scatter are said to, and less than a step is straight', () => {
    const hollow = readPoints(
      gaps((u) => 0.2 - (0.2 * u * u) / 28.5 ** 2),
      57,
      0.02,
    )
    expect(hollow.ok ? null : hollow.problems[0]?.code).toBe('edgeHollow')
    const scattered = gaps((u) => (0.5 * u * u) / 28.5 ** 2).map((p, k) => ({ ...p, gapMm: p.gapMm + (k % 2) * 0.2 }))
    expect(found(readPoints(scattered, 57, 0.02)).edge.notices[0]?.code).toBe('pointsScatter')
    expect(
      found(
        readPoints(
          gaps(() => 0),
          57,
          0.02,
        ),
      ).edge.shape,
    ).toBe('straight')
  })
})

describe('three shavings as an edge', () => {
  const read = (leftMm: number, middleMm: number, rightMm: number) =>
    readShavings({ leftMm, middleMm, rightMm, outMm: 14.25 }, 57, 30, 0.005)

  it('0.02, 0.05, 0.04: 0.16 mm, known to 0.005 / sqrt 12 x sqrt 1.5 / (0.25 x 0.5) = 0.014; the lever had turned it', () => {
    const edge = found(read(0.02, 0.05, 0.04))
    expect(edge.reliefMm).toBeCloseTo(0.16, 12)
    expect(edge.standardErrorMm).toBeCloseTo(0.01414, 5)
    expect(edge.notices[0]?.code).toBe('leverAskew')
    expect(found(read(0.03, 0.05, 0.03)).notices).toEqual([])
  })

  it('sides thicker than the middle are no camber', () => {
    const refused = read(0.05, 0.03, 0.05)
    expect(refused.ok ? null : refused.problems[0]?.code).toBe('edgeHollow')
    expect(found(read(0.04, 0.042, 0.04)).shape).toBe('straight')
  })
})
