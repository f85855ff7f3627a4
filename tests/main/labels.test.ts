import { PDFDocument } from 'pdf-lib'
import decodeQr from 'qr/decode.js'
import { describe, expect, it } from 'vitest'
import { factsOf } from '../../main/cards/facts.ts'
import { layOutCard } from '../../main/cards/layOut.ts'
import type { Box, Item, Point, ShapeItem } from '../../main/cards/sheet.ts'
import { loadTypefaces } from '../../main/cards/typefaces.ts'
import { markOf, readCode, readMark } from '../../main/contract/codes.ts'
import { checkSheet } from '../../main/contract/labelPlaces.ts'
import {
  type LabelSheet,
  labelSheets,
  paperOf,
  positionAt,
  positionCount,
  singleLabel,
} from '../../main/contract/labelSheets.ts'
import type { LabelFacts } from '../../main/labels/labelFacts.ts'
import { layOutLabels } from '../../main/labels/layOut.ts'
import { makeLabels } from '../../main/labels/makeLabels.ts'
import { found } from '../geometry/example.ts'
import { contentOf } from '../support/pdfContent.ts'
import { sampleJob, sampleReport } from './cardSample.ts'
import { codesOf } from './support.ts'

const AT = new Date('2026-01-05T12:00:00Z')
const typefaces = loadTypefaces()
const longName = 'Low-angle jack iron with a name that no label has room for, of Řezník’s make'
/** The longest codes there can be, and plain ones. */
const kinds: readonly LabelFacts[] = [
  { code: '14', name: 'Low-angle jack iron', line: '57.0 × 3.2 mm', dot: 'left' },
  { code: 'S1', name: 'Wet wheel', line: 'station', dot: null },
  { code: '123456789012', name: longName, line: '2.2441 × 0.1260 in', dot: 'right' },
  { code: 'F12345678901', name: 'W'.repeat(120), line: '', dot: null },
]
const factsAt = (i: number): LabelFacts => kinds[i % kinds.length] as LabelFacts

const isCode = (item: Item): item is ShapeItem => item.kind === 'shape' && item.outlines.length > 20

const around = (points: readonly Point[]): Box => {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  const [xMm, yMm] = [Math.min(...xs), Math.min(...ys)]
  return { xMm, yMm, widthMm: Math.max(...xs) - xMm, heightMm: Math.max(...ys) - yMm }
}
const boxOf = (item: Item): Box => (item.kind === 'text' ? item.box : around(item.outlines.flat()))
const grown = ({ xMm, yMm, widthMm, heightMm }: Box, byMm: number): Box => ({
  ...{ xMm: xMm - byMm, yMm: yMm - byMm },
  ...{ widthMm: widthMm + 2 * byMm, heightMm: heightMm + 2 * byMm },
})
const isWithin = (inner: Box, outer: Box, slackMm = 1e-6): boolean =>
  inner.xMm >= outer.xMm - slackMm &&
  inner.yMm >= outer.yMm - slackMm &&
  inner.xMm + inner.widthMm <= outer.xMm + outer.widthMm + slackMm &&
  inner.yMm + inner.heightMm <= outer.yMm + outer.heightMm + slackMm
const overlap = (a: Box, b: Box): boolean =>
  Math.min(a.xMm + a.widthMm, b.xMm + b.widthMm) - Math.max(a.xMm, b.xMm) > 0.01 &&
  Math.min(a.yMm + a.heightMm, b.yMm + b.heightMm) - Math.max(a.yMm, b.yMm) > 0.01

/** What readers and printers need, said here by itself: clear squares around a code, and the least side of one (mm). */
const CLEAR_SQUARES = 4
const LEAST_SQUARE_MM = 0.34

/** Pixels to a square when a code is drawn to be read. */
const PX = 4

/** Fills rectangles in a picture of so many squares a side, and reads it. */
const read = (rectangles: readonly (readonly Point[])[], squares = 21): string => {
  const box = around(rectangles.flat())
  const side = (squares + 2 * CLEAR_SQUARES) * PX
  const px = (mm: number) => Math.round((mm / box.widthMm) * squares * PX) + CLEAR_SQUARES * PX
  const data = new Uint8ClampedArray(side * side * 4).fill(255)
  for (const rectangle of rectangles) {
    const { xMm, yMm, widthMm, heightMm } = around(rectangle)
    const [left, right] = [px(xMm - box.xMm), px(xMm + widthMm - box.xMm)]
    for (let y = px(yMm - box.yMm); y < px(yMm + heightMm - box.yMm); y += 1)
      for (let x = left; x < right; x += 1) data.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3)
  }
  return decodeQr({ width: side, height: side, data })
}

const nameOf = ({ paper, columns, rows, widthMm, heightMm }: LabelSheet): string =>
  `${paper} ${columns} x ${rows}, ${widthMm} x ${heightMm} mm`

/** Own sheets at their limits beside those of the list. */
const atTheEdge: LabelSheet = {
  ...labelSheets[0],
  columns: 9,
  rows: 21,
  widthMm: 23.3,
  heightMm: 14.1,
  leftMm: 0,
  topMm: 0,
  gapAcrossMm: 0,
  gapDownMm: 0,
}
const sheets = [
  ...labelSheets,
  atTheEdge,
  singleLabel(16, 10),
  singleLabel(10, 14),
  singleLabel(200, 12),
  singleLabel(12, 60),
]

describe.each(sheets.map((sheet) => [nameOf(sheet), sheet] as const))('labels on %s', (_, sheet) => {
  const count = positionCount(sheet)
  const whole = Array.from({ length: count }, (__, i) => factsAt(i))
  const paper = { xMm: 0, yMm: 0, ...paperOf(sheet) }
  // One of each kind at each end of the sheet; between them every label is as its neighbours.
  const tried = [...new Set([1, 2, 3, 4, sheet.columns, count - 3, count - 2, count - 1, count])].filter(
    (at) => at >= 1 && at <= count,
  )
  const drawnAt = (position: number) => {
    const [page] = layOutLabels([whole[position - 1] as LabelFacts], sheet, position, false, typefaces)
    return page?.items ?? []
  }

  it('lie on the paper and apart from each other', () => {
    expect(checkSheet(sheet).ok).toBe(true)
    const boxes = Array.from({ length: count }, (__, i) => positionAt(sheet, i + 1))
    for (const box of boxes) expect(isWithin(box, paper, 0.3)).toBe(true)
    boxes.forEach((box, i) => {
      expect(boxes.slice(i + 1).filter((other) => overlap(box, other))).toEqual([])
    })
  })

  it('keep code and words in their label, apart, the code clear of all, and its squares large enough', () => {
    for (const position of tried) {
      const items = drawnAt(position)
      const code = items.find(isCode) as ShapeItem
      const squareMm = boxOf(code).widthMm / 21
      expect(squareMm).toBeGreaterThanOrEqual(LEAST_SQUARE_MM - 1e-9)
      const clear = grown(boxOf(code), CLEAR_SQUARES * squareMm)
      const others = items.filter((item) => item !== code)
      for (const item of others) expect(overlap(boxOf(item), clear), JSON.stringify(boxOf(item))).toBe(false)
      expect(isWithin(clear, positionAt(sheet, position), 0.01)).toBe(true)
      for (const item of items) expect(isWithin(boxOf(item), grown(positionAt(sheet, position), -1), 0.01)).toBe(true)
      const texts = others.filter(({ kind }) => kind === 'text').map(boxOf)
      texts.forEach((box, i) => {
        expect(texts.slice(i + 1).filter((other) => overlap(box, other))).toEqual([])
      })
    }
  })

  it('are read back from what is drawn', () => {
    for (const position of tried) {
      const code = drawnAt(position).find(isCode) as ShapeItem
      expect(read(code.outlines)).toBe(`CW:${(whole[position - 1] as LabelFacts).code}`)
    }
  })
})

describe('a page of labels', () => {
  const [sheet] = labelSheets
  const first = 20

  it('begins at the chosen position of a started sheet and goes on with whole ones', () => {
    const labels = Array.from({ length: 2 + 21 + 1 }, (_, i) => ({ ...factsAt(0), code: String(i + 10) }))
    const pages = layOutLabels(labels, sheet, first, false, typefaces)
    const codesIn = pages.map(({ items }) =>
      items.filter(isCode).map((item) => [read(item.outlines), boxOf(item)] as const),
    )
    expect(codesIn.map((codes) => codes.map(([code]) => code.slice(3)))).toEqual([
      ['10', '11'],
      Array.from({ length: 21 }, (_, i) => String(i + 12)),
      ['33'],
    ])
    const [started, next] = codesIn
    expect(isWithin(started?.[0]?.[1] as Box, positionAt(sheet, 20))).toBe(true)
    expect(isWithin(started?.[1]?.[1] as Box, positionAt(sheet, 21))).toBe(true)
    expect(isWithin(next?.[0]?.[1] as Box, positionAt(sheet, 1))).toBe(true)
  })

  it('draws every outline for a trial, and none otherwise', () => {
    const outlined = (outlines: boolean) =>
      layOutLabels([factsAt(0)], sheet, 1, outlines, typefaces)[0]?.items.filter(
        (item) => item.kind === 'shape' && boxOf(item).widthMm > 60,
      ).length
    expect([outlined(true), outlined(false)]).toEqual([21, 0])
  })

  it('says code, name, size and the iron’s dot', () => {
    const items = layOutLabels([factsAt(0)], sheet, 1, false, typefaces)[0]?.items ?? []
    const words = items.flatMap((item) => (item.kind === 'text' ? [item.text] : []))
    expect(words.join(' ')).toBe('14 Low-angle jack iron 57.0 × 3.2 mm')
    expect(boxOf(items.find((item) => item.kind === 'text') as Item).heightMm).toBeGreaterThan(9)
    const [outline, dot] = items.filter((item) => item.kind === 'shape' && !isCode(item)).map(boxOf) as [Box, Box]
    expect(dot.xMm + dot.widthMm / 2).toBeLessThan(outline.xMm + outline.widthMm / 2)
  })
})

describe('a job card', () => {
  it('carries the codes of tool and job, which are read as the tool’s', () => {
    const tool = { code: '14', name: 'Jack iron', dotCorner: 'left', who: '', jobCode: 'J0611' } as const
    const items = layOutCard(factsOf(sampleJob(), sampleReport(sampleJob()), tool, AT, 'mm'), typefaces)
    const text = read((items.find(isCode) as ShapeItem).outlines)
    expect(text).toBe('CW:14/J0611')
    expect(readMark(text)).toEqual({ noun: 'tool', code: '14' })
  })
})

/** Reads the filled paths of a PDF back into millimetres from the upper left corner. */
const pathsOf = (content: string, heightPt: number): (readonly Point[])[] => {
  const drawn = /1 0 0 1 0 ([\d.]+) cm[\s\S]*?([\d.]+) 0 0 -\2 0 0 cm([\s\S]*?)\nf/g
  return Array.from(content.matchAll(drawn)).flatMap(([, top, , path]) => {
    expect(Number(top)).toBeCloseTo(heightPt, 3)
    return (path as string)
      .split(/\bh\b/)
      .map((part) => Array.from(part.matchAll(/([\d.]+) ([\d.]+) [ml]/g), ([, x, y]): Point => [Number(x), Number(y)]))
      .filter((points) => points.length > 0)
  })
}

describe('labels as a file', () => {
  const paper = { sheet: singleLabel(57, 32), first: 1, outlines: false }

  it('are a page each where they are single, as large as the label, and read back from the file itself', async () => {
    const made = found(await makeLabels([factsAt(0), factsAt(1)], paper, AT))
    const pdf = await PDFDocument.load(made.bytes)
    expect(pdf.getPageCount()).toBe(2)
    const { width, height } = pdf.getPage(1).getSize()
    expect([(width * 25.4) / 72, (height * 25.4) / 72]).toEqual([expect.closeTo(57, 6), expect.closeTo(32, 6)])
    for (const [page, code] of ['14', 'S1'].entries()) {
      const runs = pathsOf(await contentOf(made.bytes, page), height).filter((points) => points.length === 4)
      expect(read(runs)).toBe(`CW:${code}`)
    }
    expect(made.fileName).toBe('labels-14-to-S1.pdf')
  })

  it('are the same to the byte for the same input', async () => {
    const make = async () => Buffer.from(found(await makeLabels([factsAt(0)], paper, AT)).bytes)
    expect((await make()).equals(await make())).toBe(true)
  })
})

describe('sheets of one’s own', () => {
  const [sheet] = labelSheets

  it('are refused where labels would be too small to read, or lie beyond the paper', () => {
    for (const tooSmall of [
      singleLabel(40, 9.8),
      singleLabel(9.8, 40),
      singleLabel(12, 12),
      { ...atTheEdge, rows: 22, heightMm: 12.8 },
    ])
      expect(codesOf(checkSheet(tooSmall))).toEqual(['labelTooSmall'])
    expect(codesOf(checkSheet({ ...sheet, columns: 4 }))).toEqual(['labelsBeyondPaper'])
    expect(codesOf(checkSheet({ ...sheet, topMm: 31 }))).toEqual(['labelsBeyondPaper'])
  })
})

describe('a code', () => {
  it.each([
    ['14', 'tool', '14'],
    ['7', 'tool', '07'],
    ['007', 'tool', '07'],
    [' s1 ', 'station', 'S1'],
    ['F 2', 'fixture', 'F2'],
  ])('typed as “%s” is that of a %s', (typed, noun, code) => {
    expect(readCode(typed)).toEqual({ noun, code })
    expect(readMark(typed)).toBeNull()
    expect(readMark(markOf(code))).toEqual({ noun, code })
  })

  it.each(['', 'jack 14', '14a', 'X3', 'J3', '1.5', '-3', '1234567890123', 'CW14', 'CW:', 'CW:X1', 'WC:14'])(
    'is not “%s”',
    (text) => {
      expect(readCode(text) ?? readMark(text)).toBeNull()
    },
  )

  it('on a card is read as the tool’s', () => {
    expect(readMark(markOf('14', 'J3'))).toEqual({ noun: 'tool', code: '14' })
    expect(readMark('cw:14/j3\n')).toEqual({ noun: 'tool', code: '14' })
  })
})
