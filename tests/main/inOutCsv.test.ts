import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { guarded, readCsv, unguarded, writeCsv } from '../../main/inOut/csv.ts'
import { textOf } from '../../main/inOut/text.ts'

const cellsOf = (text: string): readonly (readonly string[])[] | string => {
  const table = readCsv(text, null)
  return table.ok ? [table.value.head, ...table.value.rows.map(({ cells }) => cells)] : (table.problems[0]?.code ?? '')
}

/** RFC 4180, section 2, rule by rule, with its own examples. */
describe('a table as RFC 4180 has it', () => {
  it.each([
    [
      '1: a record a line',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '2: no end to the last line',
      'aaa,bbb,ccc\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '4: spaces belong to the cell',
      'a , b,c\r\n1,2,3',
      [
        ['a ', ' b', 'c'],
        ['1', '2', '3'],
      ],
    ],
    [
      '5: quotation marks around cells',
      '"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    [
      '6: a line within a cell',
      '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
      [
        ['aaa', 'b\r\nbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
    ],
    ['7: a quotation mark doubled', '"aaa","b""bb","ccc"\r\n', [['aaa', 'b"bb', 'ccc']]],
  ])('rule %s', (_, text, cells) => expect(cellsOf(text)).toEqual(cells))

  it.each([
    [
      'semicolons, as where the comma marks decimals',
      'a;b\n1,5;2,5',
      [
        ['a', 'b'],
        ['1,5', '2,5'],
      ],
    ],
    [
      'tabs',
      'a\tb\n1,5\t2;5',
      [
        ['a', 'b'],
        ['1,5', '2;5'],
      ],
    ],
    [
      'lines that end by CR alone',
      'a,b\r1,2\r',
      [
        ['a', 'b'],
        ['1', '2'],
      ],
    ],
    [
      'lines that end now so, now so',
      'a,b\n1,2\r\n3,4\n',
      [
        ['a', 'b'],
        ['1', '2'],
        ['3', '4'],
      ],
    ],
    [
      'marks within quotation marks, which part nothing',
      '"a;b;c","d\re"\n1,2\n',
      [
        ['a;b;c', 'd\re'],
        ['1', '2'],
      ],
    ],
    ['one column', 'name\nx\ny', [['name'], ['x'], ['y']]],
  ])('reads %s', (_, text, cells) => expect(cellsOf(text)).toEqual(cells))

  it('tells which line a quotation mark is wrong in, and what is no table', () => {
    expect(readCsv('a,b\n1,"2\n3,4\n', null)).toMatchObject({
      problems: [{ code: 'tableQuotes', params: { line: 2 } }],
    })
    expect(cellsOf('')).toBe('tableEmpty')
    expect(cellsOf('\n \n,,\n')).toBe('tableEmpty')
  })

  it('counts lines as a spreadsheet does, blank ones too', () => {
    const table = readCsv('a,b\n\n1,"x\ny"\n,\n2,z\n', null)
    expect(table.ok && table.value.rows.map(({ line }) => line)).toEqual([3, 5])
  })
})

describe('cells that a spreadsheet would work out', () => {
  it.each([
    ['=1+1', "'=1+1"],
    ['+1', "'+1"],
    ['-x', "'-x"],
    ['@x', "'@x"],
    ['\tx', "'\tx"],
    ['\rx', "'\rx"],
    ["'=1", "''=1"],
    ["'x", "'x"],
    ['x=1', 'x=1'],
    ['', ''],
  ])('%j goes out as %j and comes back', (words, cell) => {
    expect(guarded(words)).toBe(cell)
    expect(unguarded(cell)).toBe(words)
  })

  it('any text survives, alone and in a table', () => {
    const cell = fc.oneof(fc.string({ unit: 'grapheme' }), fc.string({ unit: fc.constantFrom(...'\'=+-@\t\r\n,;"x ') }))
    fc.assert(
      fc.property(fc.array(fc.tuple(cell, cell), { minLength: 1 }), (rows) => {
        const written = rows.map(([a, b], i) => [String(i), guarded(a), guarded(b), '.'])
        const read = cellsOf(writeCsv(['n', 'a', 'b', 'end'], written).slice(1))
        expect(read).toEqual([['n', 'a', 'b', 'end'], ...rows.map(([a, b], i) => [String(i), a, b, '.'])])
      }),
      { seed: 4180, numRuns: 300 },
    )
  })
})

describe('the encoding of a file', () => {
  const utf16 = (text: string, big: boolean): Uint8Array => {
    const bytes = new Uint8Array(text.length * 2)
    const view = new DataView(bytes.buffer)
    ;[...text].forEach((sign, i) => {
      view.setUint16(i * 2, sign.charCodeAt(0), !big)
    })
    return bytes
  }

  it.each([
    ['UTF-8', new TextEncoder().encode('é,1')],
    ['UTF-8 with a mark', new TextEncoder().encode('\ufeffé,1')],
    ['UTF-16, low byte first', utf16('\ufeffé,1', false)],
    ['UTF-16, high byte first', utf16('\ufeffé,1', true)],
  ])('%s is read', (_, bytes) => expect(textOf(bytes)).toEqual({ ok: true, value: 'é,1' }))

  it.each([
    ['Latin-1', new Uint8Array([0xe9, 0x2c, 0x31])],
    ['UTF-16 without a mark', utf16('a,1', false)],
    ['half a character in UTF-16', new Uint8Array([0xff, 0xfe, 0x00, 0xd8, 0x2c, 0x00])],
    ['half a character in UTF-8', new Uint8Array([0xed, 0xa0, 0x80])],
    ['no text at all', new Uint8Array([0x00, 0x01, 0x02])],
  ])('%s is refused', (_, bytes) => expect(textOf(bytes)).toMatchObject({ problems: [{ code: 'fileNotText' }] }))
})
