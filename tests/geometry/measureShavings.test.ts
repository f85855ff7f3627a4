import { describe, expect, it } from 'vitest'
import { camberOfShavings, readShavings } from '../../geometry/measureShavings.ts'
import { found } from './example.ts'

describe('three shavings', () => {
  it('0.02, 0.05, 0.04 at half the half width: camber 0.02, x 4 = 0.08 at the corners, / sin 30 = 0.16 in the back', () => {
    const wood = found(camberOfShavings({ leftMm: 0.02, middleMm: 0.05, rightMm: 0.04, outMm: 14.25 }, 57, 30))
    expect(wood.camberMm).toBeCloseTo(0.02, 12)
    expect(wood.woodReliefMm).toBeCloseTo(0.08, 12)
    expect(wood.reliefMm).toBeCloseTo(0.16, 12)
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
