import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { scanJson } from '../../main/commandLine/scanJson.ts'

const reads = (text: string): boolean => {
  try {
    JSON.parse(text)
    return true
  } catch {
    return false
  }
}

describe('the scan of a JSON text', () => {
  it('finds nothing wrong with what a reader takes, and never breaks in the midst of it', () => {
    fc.assert(
      fc.property(
        fc.jsonValue(),
        fc.nat(),
        fc.constantFrom('', ' ', ',', '"', ']', '}', '{', ':', '1'),
        (value, at, extra) => {
          const text = JSON.stringify(value, null, at % 3)
          const cut = at % (text.length + 1)
          const altered = text.slice(0, cut) + extra + text.slice(cut)
          if (reads(altered)) expect(scanJson(altered).breaksAt).toBeNull()
          else expect(scanJson(altered).breaksAt ?? altered.length).toBeGreaterThanOrEqual(0)
          expect(scanJson(text)).toMatchObject({ breaksAt: null, repeated: [] })
          const { breaksAt } = scanJson(text.slice(0, cut))
          if (!reads(text.slice(0, cut))) expect(text.slice(breaksAt ?? -1, cut)).not.toMatch(/^[{}[\],:]/)
        },
      ),
      { seed: 11, numRuns: 500 },
    )
  })

  it.each([
    ['{"a":1,"a":2}', ['a']],
    ['{"a":{"b":1,"b":2,"b":3}}', ['a.b']],
    ['[{"a":1},{"a":1,"\\u0061":2}]', ['1.a']],
    ['{"a":1,"b":{"a":1},"c":["a","a"]}', []],
  ])('tells what %s gives more than once', (text, repeated) => {
    expect(scanJson(text).repeated).toEqual(repeated)
  })

  it('tells where figures go beyond all figures', () => {
    expect(scanJson('{"a":[1,-1e400],"b":1e308}').beyond).toEqual(['a.1'])
  })

  it('holds out at 5 MB of brackets, of marks and of one text', () => {
    expect(scanJson('['.repeat(5e6)).breaksAt).toBe(64)
    expect(scanJson('{"a":'.repeat(1e6)).breaksAt).toBe(64 * 5)
    expect(scanJson(`"${'\\"x'.repeat(1.6e6)}"`).breaksAt).toBeNull()
    expect(scanJson(`"${'x'.repeat(5e6)}`).breaksAt).toBe(0)
  })
})
