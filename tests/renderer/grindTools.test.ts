import { describe, expect, it, test } from 'vitest'
import { bevelAngles } from '../../geometry/protractor.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import type { SteelLine } from '../../geometry/straightedge.ts'
import { radFromDeg } from '../../geometry/units.ts'
import { protractorDrawing } from '../../renderer/grind/tools/protractorDrawing.ts'
import { endsOn, marksOn, placeOf, type ruleLineNames, snapped } from '../../renderer/grind/tools/ruleLines.ts'
import { finestDrawnMm, graduations, ruleReadsMm, ruleScale } from '../../renderer/grind/tools/ruleScale.ts'
import { edgeOfField, sectionAt } from '../../renderer/grind/tools/steel.ts'
import {
  atNought,
  grindMs,
  lapped,
  MOST_LAPS,
  shownAs,
  shownMs,
  started,
  stopped,
} from '../../renderer/grind/tools/stopwatch.ts'
import { readStraightedge, timesRelief, widestGapeMm } from '../../renderer/grind/tools/straightedgeReading.ts'
import { addStraightedge, HEIGHT_PX, straightedgeScale } from '../../renderer/grind/tools/straightedgeScale.ts'
import { exampleJob, found } from '../geometry/example.ts'

const HALF_MM = 28.5
const edgeOf = (backAt: (u: number) => number, points = 115): SteelLine => {
  const atMm = Array.from({ length: points }, (_, i) => HALF_MM * ((2 * i) / (points - 1) - 1))
  return { atMm, backMm: atMm.map(backAt) }
}
/** Relief 0.5 mm, receded by 0.3. */
const arc = edgeOf((u) => 0.3 + 0.5 * (u / HALF_MM) ** 2)
const held = { press: 0, leafMm: 0.5, leafShare: 1, stepMm: 0.05 }

describe('straightedge', () => {
  it('balanced, a leaf of 0.50 goes under at the corner and 0.51 does not; halfway 0.10 of a set by twentieths', () => {
    const reading = readStraightedge(arc, held)
    expect(reading.goesUnder).toBe(true)
    expect(readStraightedge(arc, { ...held, leafMm: 0.51 }).goesUnder).toBe(false)
    expect(reading.leavesMm.map((mm) => mm.toFixed(2))).toEqual(['0.50', '0.10', '0.00', '0.10', '0.50'])
    expect(found(reading.shown).reliefMm).toBeCloseTo(0.5, 12)
    expect(reading.rocks).toBe(true)
  })

  it('rocked onto the left, no leaf goes under there and four times the relief gapes at the right', () => {
    const reading = readStraightedge(arc, { ...held, press: -1 })
    expect(reading.leavesMm[0]).toBe(0)
    expect(reading.gapsMm[4]).toBeCloseTo(2 * (1 - 1 / 114), 10)
    expect(timesRelief(arc, -1)).toBeCloseTo(4, 1)
    expect(found(reading.shown).notices[0]?.code).toBe('restsOnCorner')
  })

  it('does not rock on a straight edge, and leaves read it as straight', () => {
    const reading = readStraightedge(
      edgeOf((u) => 0.01 * u),
      held,
    )
    expect(reading.rocks).toBe(false)
    expect(found(reading.shown).shape).toBe('straight')
    expect(
      timesRelief(
        edgeOf(() => 0),
        1,
      ),
    ).toBeNull()
  })

  it('its drawing holds the highest stand, touches the datum when balanced, and tilts as the slope says', () => {
    const scale = straightedgeScale(57, widestGapeMm(arc), 342)
    const points = (press: number) => {
      const found: (readonly [number, number])[] = []
      addStraightedge({ add: (x, y) => found.push([x, y]) }, readStraightedge(arc, { ...held, press }).rest, 0.3, scale)
      return found
    }
    const [[, balancedLeft], [, balancedRight]] = points(0) as [readonly [number, number], readonly [number, number]]
    expect(balancedLeft).toBeCloseTo(scale.topPx, 2)
    expect(balancedRight).toBeCloseTo(scale.topPx, 2)
    for (const press of [-1, 1]) {
      const ys = points(press).map(([, y]) => y)
      expect(Math.min(...ys)).toBeGreaterThan(-8)
      expect(Math.max(...ys)).toBeLessThan(HEIGHT_PX)
    }
    const [[x0, y0], [x1, y1]] = points(1) as [readonly [number, number], readonly [number, number]]
    const slope = (y1 - y0) / scale.depthPxPerMm / ((x1 - x0) / scale.acrossPxPerMm)
    expect(slope).toBeCloseTo(readStraightedge(arc, { ...held, press: 1 }).rest.slope, 4)
  })
})

test('the protractor draws its lines at the very angles it tells', () => {
  const atMm = Array.from({ length: 17 }, (_, j) => 0.2 * j)
  const section = { atMm, backMm: atMm.map((n) => 0.4 + n / Math.tan(radFromDeg(25)) - 0.02 * n * (3.2 - n)) }
  const angles = bevelAngles(section)
  const drawing = protractorDrawing(section, angles, 340)
  for (const [line, rad] of [
    [drawing.tip.line, angles.tipRad],
    [drawing.chord.line, angles.chordRad],
  ] as const) {
    const [ax, ay, bx, by] = (line.match(/[\d.]+/g) ?? []).map(Number) as [number, number, number, number]
    expect(Math.atan2(ay - by, bx - ax)).toBeCloseTo(rad, 2)
  }
  expect(angles.tipRad).not.toBeCloseTo(angles.chordRad, 2)
})

describe('rule', () => {
  const shape = {
    uMm: Float64Array.from([-28.5, 0, 28.5]),
    nMm: Float64Array.from([0, 1.6, 3.2]),
    acrossCount: 3,
    throughCount: 3,
  } as Parameters<typeof edgeOfField>[0]
  const field = Float64Array.from([0.8, 4, 7.5, 0.4, 3.7, 7.2, 0.7, 4, 7.4])
  const setUp = found(setUpOf(exampleJob()))
  const standing = { setUp, edge: edgeOfField(shape, field), section: sectionAt(shape, field, 1) }
  const length = (line: (typeof ruleLineNames)[number]) => {
    const marks = marksOn(line, standing)
    const [from, to] = endsOn(line, undefined)
    return placeOf(to, marks) - placeOf(from, marks)
  }

  it('lies on the things its lines are named for, and follows the edge as it recedes', () => {
    expect(length('bevel')).toBeCloseTo(Math.hypot(6.8, 3.2), 12)
    expect(length('projection')).toBeCloseTo(130 - 0.4, 10)
    expect(length('gap')).toBeCloseTo(setUp.barDistanceMm - 125 - 6, 10)
    expect(length('width')).toBe(57)
    expect(length('relief')).toBeCloseTo(0.4, 12)
  })

  it('takes the section nearest to a place', () => {
    expect(Array.from(sectionAt(shape, field, 28).backMm)).toEqual([0.7, 4, 7.4])
    expect(Array.from(sectionAt(shape, field, -99).backMm)).toEqual([0.8, 4, 7.5])
  })

  it('an end goes to a mark within reach, and else stays where it was put', () => {
    const marks = marksOn('width', standing)
    expect(snapped(28, marks, 1)).toBe('middle')
    expect(snapped(25, marks, 1)).toBe(25)
    expect(placeOf(snapped(56.5, marks, 1), marks)).toBe(57)
  })

  it('reads to half a millimetre, in inches to a sixty-fourth: a tenth is nothing to it', () => {
    expect(ruleReadsMm(7.57, 'mm')).toBe(7.5)
    expect(ruleReadsMm(7.8, 'mm')).toBe(8)
    expect(ruleReadsMm(0.1, 'mm')).toBe(0)
    expect(ruleReadsMm(25.4 / 3, 'inch') / 25.4).toBeCloseTo(21 / 64, 12)
  })

  it('is graduated true to its factor: at life size by whole millimetres, twice that by halves', () => {
    // 96 px to the inch: 3.78 px a millimetre, 1.89 px a half.
    const { pxPerMm, factor } = ruleScale(76, 340)
    expect(factor).toBe(1)
    expect(finestDrawnMm(pxPerMm, 'mm')).toBe(1)
    expect(finestDrawnMm(2 * pxPerMm, 'mm')).toBe(0.5)
    const lines = graduations(60, 2 * pxPerMm, 'mm')
    expect(lines).toHaveLength(121)
    expect(lines.filter(({ figure }) => figure !== null).map(({ mm, figure }) => [mm, figure])).toEqual(
      [0, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60].map((mm) => [mm, String(mm)]),
    )
    const inches = graduations(25.4, 2 * pxPerMm, 'inch')
    expect(inches.filter(({ figure }) => figure !== null).map(({ figure }) => figure)).toEqual([
      '0',
      '0.25',
      '0.5',
      '0.75',
      '1',
    ])
  })
})

describe('stopwatch', () => {
  it('counts while it runs, stands when stopped, goes on where it stood', () => {
    const running = started(atNought, 1000, 12)
    expect(shownMs(running, 3500)).toBe(2500)
    expect(started(running, 9000, 40)).toBe(running)
    const stood = stopped(running, 3500)
    expect(shownMs(stood, 99_000)).toBe(2500)
    const again = started(stood, 10_000, 40)
    expect(shownMs(again, 10_400)).toBe(2900)
    expect(again.fromSweep).toBe(12)
  })

  it('moments keep the time shown and the sweep; the newest are kept', () => {
    let watch = started(atNought, 0, 0)
    for (let k = 1; k <= MOST_LAPS + 5; k++) watch = lapped(watch, k * 100, k)
    expect(watch.laps).toHaveLength(MOST_LAPS)
    expect(watch.laps.at(-1)).toEqual({ ms: 5500, sweep: 55 })
    expect(watch.laps[0]?.sweep).toBe(6)
  })

  it('the time of the grind between two moments is that of its sweeps, either way', () => {
    expect(grindMs(60, 90, 4.5)).toBe(135_000)
    expect(grindMs(90, 60, 4.5)).toBe(135_000)
  })

  it('shows minutes, seconds and tenths, cut', () => {
    expect(shownAs(135_000)).toEqual({ minutes: 2, seconds: '15.0' })
    expect(shownAs(59_999)).toEqual({ minutes: 0, seconds: '59.9' })
    expect(shownAs(300)).toEqual({ minutes: 0, seconds: '00.3' })
  })
})
