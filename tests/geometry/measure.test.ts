import { describe, expect, it } from 'vitest'
import { type LeafReading, readLeaves } from '../../geometry/measure.ts'
import { exampleJob, found, ground } from './example.ts'

const reading = (changes: Partial<LeafReading> = {}): LeafReading => ({
  widthMm: 57,
  cornerLeftMm: 0.5,
  cornerRightMm: 0.5,
  halfwayLeftMm: null,
  halfwayRightMm: null,
  stepMm: 0.02,
  ...changes,
})
const read = (changes?: Partial<LeafReading>) => found(readLeaves(reading(changes)))
const codes = (changes?: Partial<LeafReading>) => read(changes).notices.map(({ code }) => code)

describe('equal leaves', () => {
  it('half a millimetre on 57 mm: radius (28.5^2 + 0.5^2) / (2 x 0.5) = 812.25 + 0.25 = 812.5 mm', () => {
    const edge = read()
    expect(edge.reliefMm).toBe(0.5)
    expect(edge.radiusMm).toBeCloseTo(812.5, 10)
    expect(edge.standardErrorMm).toBeCloseTo(0.011547, 6)
    expect(edge.shape).toBeNull()
    expect(edge.notices).toEqual([])
  })

  it('chord 21, height 6 has radius 12.1875 (MatheAss help, "Circular Sections")', () => {
    expect(read({ widthMm: 21, cornerLeftMm: 6, cornerRightMm: 6 }).radiusMm).toBeCloseTo(12.1875, 12)
  })

  it.each([
    [0.12, 'arc'],
    [0.18, 'between'],
    [0.24, 'roof'],
    [0.04, 'neither'],
    [0.34, 'neither'],
  ])('halfway %f of 0.5 mm: %s', (halfwayMm, shape) => {
    expect(read({ halfwayLeftMm: halfwayMm }).shape).toBe(shape)
    expect(read({ halfwayLeftMm: halfwayMm - 0.01, halfwayRightMm: halfwayMm + 0.01 }).shape).toBe(shape)
  })

  it('the edge formed by two stops in the engine is called a roof', () => {
    const { vMm, throughCount, acrossCount } = ground(exampleJob({ grid: { across: 57, through: 5 } }), 300)
    const at = (i: number) => vMm[i * throughCount] as number
    const crown = at((acrossCount - 1) / 2)
    const [corner, halfway] = [at(0) - crown, at((acrossCount - 1) / 4) - crown]
    expect(read({ cornerLeftMm: corner, cornerRightMm: corner, halfwayLeftMm: halfway, stepMm: 0.001 }).shape).toBe(
      'roof',
    )
  })

  it('leaves too coarse for a small curve give no shape', () => {
    const coarse = { cornerLeftMm: 0.1, cornerRightMm: 0.1, halfwayLeftMm: 0.05, stepMm: 0.05 }
    expect(read(coarse).shape).toBeNull()
    expect(codes(coarse)).toEqual(['leavesTooCoarseForShape'])
  })

  it('no leaf passes: straight, without a radius', () => {
    const edge = read({ cornerLeftMm: 0, cornerRightMm: 0 })
    expect([edge.shape, edge.radiusMm, edge.reliefMm]).toEqual(['straight', null, 0])
  })
})

describe('unequal leaves', () => {
  it('resting on a corner of an arc of 0.5 mm: 0 and 2 mm, and 0.5 is the least of what is told', () => {
    const { notices, shape, reliefLeftMm, reliefRightMm } = read({ cornerLeftMm: 0, cornerRightMm: 2 })
    expect(notices).toEqual([{ code: 'restsOnCorner', params: { leftMm: 0, rightMm: 2, leastMm: 0.5, mostMm: 1 } }])
    expect(shape).toBeNull()
    expect(reliefLeftMm).toBe(reliefRightMm)
  })

  it('touching a fifth of the half width off: 0.5 x 0.8^2 = 0.32, 0.5 x 1.2^2 = 0.72; sqrt gives 0.5, the mean 0.52', () => {
    const edge = read({ cornerLeftMm: 0.32, cornerRightMm: 0.72 })
    expect(edge.notices[0]?.code).toBe('leavesUnequal')
    expect(edge.notices[0]?.params.leastMm).toBeCloseTo(0.5, 12)
    expect(edge.notices[0]?.params.mostMm).toBeCloseTo(0.52, 12)
  })

  it('within a step of each other they count as equal', () => {
    expect(codes({ cornerLeftMm: 0.5, cornerRightMm: 0.51 })).toEqual([])
    expect(codes({ cornerLeftMm: 0.5, cornerRightMm: 0.53 })).toEqual(['leavesUnequal'])
  })

  it('just a step apart they count as equal, whatever rounding makes of it', () => {
    expect(0.51 - 0.49).toBeGreaterThan(0.02)
    expect(codes({ cornerLeftMm: 0.49, cornerRightMm: 0.51 })).toEqual([])
  })
})

describe('refused', () => {
  it.each([
    [{ halfwayLeftMm: 0.6 }, 'halfwayMoreThanCorner', 'halfwayLeftMm'],
    [{ widthMm: 3, cornerLeftMm: 2, cornerRightMm: 2 }, 'reliefTooGreat', 'cornerLeftMm'],
    [{ cornerLeftMm: -0.1 }, 'tooSmall', 'cornerLeftMm'],
    [{ cornerRightMm: Number.NaN }, 'tooSmall', 'cornerRightMm'],
    [{ stepMm: 0 }, 'tooSmall', 'stepMm'],
    [{ widthMm: 500 }, 'tooLarge', 'widthMm'],
  ])('%j: %s at %s', (changes, code, path) => {
    const result = readLeaves(reading(changes))
    expect(result.ok ? null : [result.problems[0]?.code, result.problems[0]?.path]).toEqual([code, path])
  })
})
