import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Unit } from '../../geometry/quantities.ts'
import { readFigure } from '../../main/contract/typedFigure.ts'

const mm = (text: string) => readFigure(text, 'mm', 'mm')
const value = (text: string, unit: Unit = 'mm', lengthUnit: 'mm' | 'inch' | 'thou' = 'mm') => {
  const read = readFigure(text, unit, lengthUnit)
  return read.ok ? read.value : read.problems[0]?.code
}

describe('figures as people type them', () => {
  test.each<[string, number]>([
    ['57', 57],
    ['57 mm', 57],
    ['57mm', 57],
    ['57 MM', 57],
    [' 57 \u00a0mm ', 57],
    ['0,5', 0.5],
    ['0.5', 0.5],
    [',5', 0.5],
    ['.5', 0.5],
    ['5.', 5],
    ['9,8', 9.8],
    ['1,250', 1.25],
    ['+3', 3],
    ['-3', -3],
    ['−3', -3],
    ['1/2', 0.5],
    ['5.7 cm', 57],
    ['50 µm', 0.05],
    ['50 μm', 0.05],
    // An inch is 25.4 mm: 2.25 x 25.4 = 57.15, -2.25 x 25.4 = -57.15, 0.02 x 25.4 = 0.508.
    ['2 1/4 in', 57.15],
    ['2-1/4"', 57.15],
    ['2-1/4 inches', 57.15],
    ['2¼ in', 57.15],
    ['2⅛ in', 53.975],
    ['½ in', 12.7],
    ['-2 1/4 in', -57.15],
    ['2 1⁄4 in', 57.15],
    ['20 thou', 0.508],
    ["2''", 50.8],
  ])('%j is %d mm', (text, expected) => {
    expect(value(text)).toBe(expected)
  })

  test.each<[string, Unit, number]>([
    ['25°', 'deg', 25],
    ['25 deg', 'deg', 25],
    ['25', 'deg', 25],
    ["24°30'", 'deg', 24.5],
    ['24° 30′ 36″', 'deg', 24.51],
    ["-1°15'", 'deg', -1.25],
    ['1.5 turns', 'turn', 1.5],
    ['1 1/2 turns', 'turn', 1.5],
    ['1½', 'turn', 1.5],
    ['1 turn', 'turn', 1],
    ['90 rpm', 'rpm', 90],
    ['20 N', 'N', 20],
    ['20 m/s', 'mPerS', 20],
    ['25 %', 'share', 0.25],
    ['0.25', 'share', 0.25],
    ['120 sweeps', 'sweep', 120],
    ['115', 'count', 115],
  ])('%j as %s is %d', (text, unit, expected) => {
    expect(value(text, unit)).toBe(expected)
  })

  test('a bare length is in the unit the workshop reads, a named one in its own', () => {
    expect(value('2 1/4', 'mm', 'inch')).toBe(57.15)
    expect(value('20', 'mm', 'thou')).toBe(0.508)
    expect(value('57 mm', 'mm', 'inch')).toBe(57)
    expect(value('25', 'deg', 'inch')).toBe(25)
  })
})

describe('what cannot be read is refused, never guessed', () => {
  test.each<[string, string]>([
    ['', 'missing'],
    ['   ', 'missing'],
    ['1,234,567', 'figureGrouped'],
    ['1.234,5', 'figureGrouped'],
    ['1,234.5', 'figureGrouped'],
    ['1 000', 'figureGrouped'],
    ["1'000", 'figureGrouped'],
    ['57 57', 'figureGrouped'],
    ['abc', 'figureUnreadable'],
    ['mm', 'figureUnreadable'],
    ['57 m', 'figureUnreadable'],
    ['57 mmm', 'figureUnreadable'],
    ['1e3', 'figureUnreadable'],
    ['0x10', 'figureUnreadable'],
    ['Infinity', 'figureUnreadable'],
    ['NaN', 'figureUnreadable'],
    ['--3', 'figureUnreadable'],
    ['3-', 'figureUnreadable'],
    ['1/0', 'figureUnreadable'],
    ['2 5/4 in', 'figureGrouped'],
    ['1/2/3', 'figureUnreadable'],
    ['2.5 1/4', 'figureGrouped'],
    ['٥', 'figureUnreadable'],
    ['constructor', 'figureUnreadable'],
    ['5 constructor', 'figureUnreadable'],
    ['5 toString', 'figureUnreadable'],
    ['57 deg', 'figureWrongUnit'],
    ['57°', 'figureWrongUnit'],
    ['2 turns', 'figureWrongUnit'],
    ['57 %', 'figureWrongUnit'],
  ])('%j: %s', (text, code) => {
    expect(value(text)).toBe(code)
  })

  test('an angle in millimetres and turns in inches are refused', () => {
    expect(value('25 mm', 'deg')).toBe('figureWrongUnit')
    expect(value('1 in', 'turn')).toBe('figureWrongUnit')
  })
})

describe('for any figure', () => {
  const figures = fc.integer({ min: 0, max: 99_999_999 }).map((n) => n / 10_000)

  test('comma and point say the same (seed 20250)', () => {
    fc.assert(
      fc.property(figures, (n) => {
        const text = n.toFixed(4)
        expect(mm(text.replace('.', ','))).toEqual(mm(text))
        expect(value(text)).toBe(Number(text))
      }),
      { seed: 20250 },
    )
  })

  test('any text answers a finite figure or a problem (seed 20251)', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 40 }), (text) => {
        const read = mm(text)
        expect(read.ok ? Number.isFinite(read.value) : read.problems.length === 1).toBe(true)
      }),
      { seed: 20251, numRuns: 2000 },
    )
  })

  test('sixteenths of an inch are exact to the picometre (seed 20252)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20 }), fc.integer({ min: 1, max: 15 }), (whole, sixteenths) => {
        const read = value(`${whole} ${sixteenths}/16 in`)
        expect(Math.abs((read as number) - (whole + sixteenths / 16) * 25.4)).toBeLessThan(1e-9)
      }),
      { seed: 20252 },
    )
  })
})

test.each(["24°60'", '24°30', '24°30"', "24.5°30'"])('%s is no angle, and is refused rather than guessed', (text) => {
  expect(value(text, 'deg')).toMatch(/^figure(Unreadable|Grouped|WrongUnit)$/)
})

test('degrees and minutes are no length', () => {
  expect(value("24°30'")).toMatch(/^figure(Unreadable|Grouped|WrongUnit)$/)
})
