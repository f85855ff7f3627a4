import { describe, expect, it } from 'vitest'
import { createWedge, type Heard, READER_PAUSE_MS, type WedgeKey } from '../../renderer/scan/wedge.ts'

const codeOf = (sign: string): string => {
  if (/[A-Za-z]/.test(sign)) return `Key${sign.toUpperCase()}`
  return /\d/.test(sign) ? `Digit${sign}` : ({ ':': 'Semicolon', '/': 'Slash' }[sign] ?? sign)
}

/** Key presses of a text, a pause apart, with what another keyboard shows for some. */
const presses = (text: string, pauseMs: number, shown: Record<string, string> = {}): WedgeKey[] =>
  [...text, 'Enter'].map((sign, i) => ({
    key: shown[sign] ?? sign,
    code: codeOf(sign),
    shiftKey: sign === ':',
    timeMs: i * pauseMs,
  }))

const hearAll = (keys: readonly WedgeKey[]): Heard[] => {
  const wedge = createWedge()
  return keys.map((key) => wedge.hear(key))
}

const marked = (keys: readonly WedgeKey[]): string[] =>
  hearAll(keys).flatMap((heard) => (heard.kind === 'mark' ? [heard.read.code] : []))

describe('a reader at the keyboard', () => {
  it.each([
    ['CW:14', '14'],
    ['CW:S1', 'S1'],
    ['CW:14/J3', '14'],
    ['cw:f2', 'F2'],
  ])('is heard to read “%s”', (text, code) => {
    expect(marked(presses(text, 12))).toEqual([code])
    expect(
      hearAll(presses(text, 12))
        .slice(0, -1)
        .map(({ kind }) => kind),
    ).toEqual(Array(text.length).fill('part'))
  })

  it('is heard with Shift pressed for its capitals, and where it ends with Tab', () => {
    const shift = (timeMs: number): WedgeKey => ({ key: 'Shift', code: 'ShiftLeft', shiftKey: true, timeMs })
    const keys = presses('CW:14', 10).flatMap((key) => [shift(key.timeMs), key])
    expect(marked(keys)).toEqual(['14'])
    expect(marked(presses('CW:14', 10).map((key) => (key.key === 'Enter' ? { ...key, key: 'Tab' } : key)))).toEqual([
      '14',
    ])
  })

  it('is heard whichever keyboard is chosen in the system', () => {
    expect(marked(presses('CW:14/J3', 8, { ':': 'Ö', '/': '-' }))).toEqual(['14'])
    expect(marked(presses('CW:14', 8, { W: 'Z', ':': 'M', 1: '&', 4: "'" }))).toEqual(['14'])
  })

  it('is told from hands by its haste alone', () => {
    expect(marked(presses('CW:14', READER_PAUSE_MS))).toEqual(['14'])
    expect(marked(presses('CW:14', READER_PAUSE_MS + 1))).toEqual([])
    const late = presses('CW:14', 10).map((key) => (key.key === 'Enter' ? { ...key, timeMs: key.timeMs + 50 } : key))
    expect(marked(late)).toEqual([])
  })

  it('is not taken for one where it reads something else', () => {
    for (const text of ['14', '4006381333931', 'CW14', 'CW:', 'CW:X9', 'XCW14'])
      expect(marked(presses(text, 5))).toEqual([])
    expect(hearAll(presses('14', 5)).map(({ kind }) => kind)).toEqual(['other', 'other', 'other'])
  })

  it('begins anew at a C, whatever came just before', () => {
    expect(marked(presses('7CCW:14', 5))).toEqual(['14'])
    const kinds = hearAll(presses('7CCW', 5)).map((heard) => (heard.kind === 'part' ? heard.first : heard.kind))
    expect(kinds).toEqual(['other', true, true, false, 'other'])
  })
})
