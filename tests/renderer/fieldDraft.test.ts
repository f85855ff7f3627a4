import { describe, expect, test } from 'vitest'
import { quantities } from '../../geometry/quantities.ts'
import { readField, restText, stepped } from '../../renderer/ui/fieldDraft.ts'

const { widthMm } = quantities.blade
const { reliefMm, bevelAngleDeg } = quantities.aim

describe('what stands in a field at rest', () => {
  test('a typed figure keeps what was typed, a found one shows no dust', () => {
    expect(restText(57, widthMm, 'mm')).toBe('57.0')
    expect(restText(57.15, widthMm, 'mm')).toBe('57.15')
    expect(restText(76.59231, widthMm, 'mm')).toBe('76.6')
    expect(restText(null, widthMm, 'mm')).toBe('')
  })

  test('in inches and thou', () => {
    expect(restText(57.15, widthMm, 'inch')).toBe('2.250')
    expect(restText(0.508, reliefMm, 'thou')).toBe('20.0')
    expect(restText(0.5, reliefMm, 'thou')).toBe('19.7')
  })

  test('reading it back gives the same figure, or one that shows the same', () => {
    for (const lengthUnit of ['mm', 'inch', 'thou'] as const) {
      for (const value of [57, 57.15, 50.8, 33.333333]) {
        const text = restText(value, widthMm, lengthUnit)
        const read = readField(text, widthMm, lengthUnit, false)
        expect(read.ok && restText(read.value, widthMm, lengthUnit)).toBe(text)
      }
    }
  })
})

describe('what is typed', () => {
  test('keeps within the range, and says the limit in the unit that is read', () => {
    expect(readField('57', widthMm, 'mm', false)).toEqual({ ok: true, value: 57 })
    expect(readField('2', widthMm, 'mm', false)).toMatchObject({
      problems: [{ code: 'figureTooSmall', params: { least: '3\u00a0mm' } }],
    })
    expect(readField('91', bevelAngleDeg, 'mm', false)).toMatchObject({
      problems: [{ code: 'figureTooLarge', params: { most: '70°' } }],
    })
    expect(readField('90', widthMm, 'inch', false)).toMatchObject({ problems: [{ code: 'figureTooLarge' }] })
  })

  test('what is counted comes whole', () => {
    for (const quantity of [quantities.honing.strokes, quantities.motion.sweeps]) {
      expect(readField('2.5', quantity, 'mm', false)).toMatchObject({ problems: [{ code: 'notWhole' }] })
      expect(readField('3', quantity, 'mm', false)).toEqual({ ok: true, value: 3 })
    }
    expect(readField('2.5', quantities.motion.loadN, 'mm', false)).toEqual({ ok: true, value: 2.5 })
  })

  test('nothing is an answer only where it may be', () => {
    expect(readField(' ', widthMm, 'mm', true)).toEqual({ ok: true, value: null })
    expect(readField(' ', widthMm, 'mm', false)).toMatchObject({ problems: [{ code: 'missing' }] })
  })
})

describe('arrow keys', () => {
  test('step the last digit shown', () => {
    expect(stepped('57.0', 1, widthMm, 'mm')).toBe('57.1')
    expect(stepped('57.0', -10, widthMm, 'mm')).toBe('56.0')
    expect(stepped('0.50', 1, reliefMm, 'mm')).toBe('0.51')
    expect(stepped('20', 1, reliefMm, 'thou')).toBe('20.1')
    expect(stepped('2.250', 1, widthMm, 'inch')).toBe('2.251')
  })

  test('stop at the limits, and leave what cannot be read alone', () => {
    expect(stepped('120', 1, widthMm, 'mm')).toBe('120.0')
    expect(stepped('3', -1, widthMm, 'mm')).toBe('3.0')
    expect(stepped('abc', 1, widthMm, 'mm')).toBe('abc')
  })
})
