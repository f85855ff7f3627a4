import { describe, expect, it } from 'vitest'
import { fitPoints, readPoints } from '../../geometry/measurePoints.ts'
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

describe('what points do not tell', () => {
  const at = (...points: readonly (readonly [number, number])[]) =>
    readPoints(
      points.map(([uMm, gapMm]) => ({ uMm, gapMm })),
      57,
      0.02,
    )
  const refusal = (read: ReturnType<typeof at>) => (read.ok ? null : read.problems[0]?.code)
  const notices = (read: ReturnType<typeof at>) => found(read).edge.notices

  it('up and down by 0.5 from place to place is scatter and no hollow; a hollow with a nick in it is one still', () => {
    expect(refusal(at([-28, 0], [-14, 0.5], [0, 0], [14, 0.5], [28, 0]))).toBe('pointsScatter')
    expect(refusal(at([-28, 0], [-20, 0.5], [-10, 0.9], [0, 1], [10, 0.8], [20, 0.5], [28, 0]))).toBe('edgeHollow')
  })

  it('places within half of half the width leave the corners to the curve alone, and that is said', () => {
    const [near] = notices(at([-14, 0.1], [0, 0], [14, 0.1]))
    expect(near).toEqual({ code: 'pointsNearMiddle', params: { outMm: 14, halfMm: 28.5 } })
    expect(notices(at([-14.25, 0.1], [0, 0], [14.25, 0.1]))).toEqual([])
    expect(notices(at([-5, 0.01], [0, 0], [28, 0.4]))).toEqual([])
  })

  it('a place read again is said; places a hair apart are one, and two are too few', () => {
    const again = at([-28, 0.4], [0, 0], [28, 0.38], [28, 0.42])
    expect(found(again).edge.reliefMm).toBeCloseTo(found(at([-28, 0.4], [0, 0], [28, 0.4])).edge.reliefMm, 9)
    expect(notices(again)).toEqual([{ code: 'placesAgain', params: { again: 1, points: 4 } }])
    expect(refusal(at([10, 0.1], [10.05, 0.1], [10.09, 0.2], [-10, 0]))).toBe('placesTooFew')
  })
})
