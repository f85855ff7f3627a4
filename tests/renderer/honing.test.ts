import { describe, expect, it } from 'vitest'
import { hollowOf } from '../../geometry/hollow.ts'
import { radFromDeg } from '../../geometry/units.ts'
import { type Hollowed, honedBevel } from '../../renderer/honing/bevel.ts'
import { sectionOf } from '../../renderer/honing/section.ts'
import { steelNamed } from '../../renderer/honing/steels.ts'
import { verdictOf } from '../../renderer/honing/verdict.ts'

describe('the steel that words name', () => {
  it.each([
    ['O1 carbon steel', 'O1'],
    ['O-1', 'O1'],
    ['A-2, cryogenic', 'A2'],
    ['high-carbon D2', 'D2'],
    ['high-carbon steel 52100', '52100'],
    ['HSS M2', 'M2'],
    ['oil-hardening', 'O1'],
    ['carbon steel', 'W1'],
    ['Plain carbon', 'W1'],
    ['high-carbon steel', null],
    ['low-carbon back, steel unknown', null],
    ['a 2 mm blade of powder steel', null],
    ['O1 or A2', null],
    ['', null],
  ])('%s: %s', (words, steel) => expect(steelNamed(words)).toBe(steel))
})

const hollowed = (wheelDiameterMm: number): Hollowed => ({
  hollow: hollowOf(wheelDiameterMm / 2, radFromDeg(25), 3),
  setUp: { bevelAngleDeg: 25 },
  job: { station: { wheelDiameterMm }, blade: { thicknessMm: 3 } },
})
/** 250 mm wheel, 3 mm thick, 25 degrees: the chord is at 26.67, the hollow 0.18 mm deep. */
const usual = hollowed(250)

describe('what one honing makes of a hollow bevel', () => {
  it('at 30 degrees, 0.02 mm back: a flat, and honings until the stone reaches the heel', () => {
    const honed = honedBevel(usual, 30, 0.02)
    expect(honed).toMatchObject({ kind: 'flat' })
    const heelMm = usual.hollow.chordMm * Math.cos(radFromDeg(usual.hollow.chordAngleDeg))
    const lasts = heelMm - 3 / Math.tan(radFromDeg(30))
    expect(honed.kind === 'flat' && honed.honings).toBe(Math.floor(lasts / 0.02))
  })

  it('no steeper than the chord: the stone lies on the heel', () => {
    expect(usual.hollow.chordAngleDeg).toBeGreaterThan(25.5)
    expect(honedBevel(usual, 25.5, 0.02)).toEqual({ kind: 'onHeel' })
  })

  it('steeper than the chord and 1 mm back: the whole hollow, a flat of 3 / sin 30 = 6 mm', () => {
    const honed = honedBevel(usual, 30, 1)
    expect(honed.kind).toBe('whole')
    expect(honed.kind === 'whole' && honed.widthMm).toBeCloseTo(6, 9)
  })

  it('hardly steeper than the chord: edge and heel, some hollow between', () => {
    const steeper = usual.hollow.chordAngleDeg + 0.05
    expect(honedBevel(usual, steeper, 0.05).kind).toBe('reachesHeel')
  })
})

describe('the section', () => {
  const sectionAt = (honedDeg: number, setBackMm: number) =>
    sectionOf(usual, honedDeg, setBackMm, honedBevel(usual, honedDeg, setBackMm))
  const fromWheel = ([v, n]: readonly [number, number]) =>
    Math.hypot(v + 125 * Math.sin(radFromDeg(25)), n - 125 * Math.cos(radFromDeg(25)))

  it('a flat ends on the wheel, the hollow goes on to the heel', () => {
    const { bevel, flats, heelMm } = sectionAt(30, 0.02)
    expect(fromWheel(flats[0]?.[1] ?? [0, 0])).toBeCloseTo(125, 9)
    expect(bevel.at(-1)?.[0]).toBeCloseTo(heelMm, 9)
  })

  it('the whole hollow gone: one straight line from edge to upper face', () => {
    const { bevel, flats } = sectionAt(30, 1)
    expect(flats).toEqual([bevel])
    expect(bevel[1]?.[0]).toBeCloseTo(1 + 3 / Math.tan(radFromDeg(30)), 9)
    expect(bevel[1]?.[1]).toBe(3)
  })

  it('a stone on the heel leaves the bevel as ground', () => {
    const { bevel, ground, flats } = sectionAt(25.5, 0.02)
    expect([bevel, flats]).toEqual([ground, []])
  })

  it('flats at edge and heel lie on one line, and both end on the wheel', () => {
    const steeper = usual.hollow.chordAngleDeg + 0.05
    const { bevel, flats } = sectionAt(steeper, 0.05)
    const again = bevel.at(-2) as readonly [number, number]
    const top = bevel.at(-1) as readonly [number, number]
    expect((top[1] - again[1]) / (top[0] - again[0])).toBeCloseTo(Math.tan(radFromDeg(steeper)), 6)
    expect(fromWheel(again)).toBeCloseTo(125, 9)
    expect(again[1]).toBeLessThan(3)
    expect(flats).toHaveLength(2)
  })
})

describe('what strokes do', () => {
  it.each([
    [0, 0.008, 'straight'],
    [0.01, 0.01, 'straight'],
    [0.07, 0.068, 'kept'],
    [0.07, 0.047, 'flatter'],
    [0.07, 0.09, 'deeper'],
  ])('%d mm before and %d after: %s', (before, after, verdict) => expect(verdictOf(before, after)).toBe(verdict))
})
