import { PDFDict, PDFDocument, PDFName, PDFRef } from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import type { Job } from '../../geometry/job.ts'
import { cardOfJob, toolOfJob } from '../../main/cards/card.ts'
import { type CardTool, factsOf } from '../../main/cards/facts.ts'
import { layOutCard } from '../../main/cards/layOut.ts'
import { type Item, PAGE, type TextItem } from '../../main/cards/sheet.ts'
import { FIGURE_SHARE, loadTypefaces } from '../../main/cards/typefaces.ts'
import { sampleJob, sampleReport } from './cardSample.ts'

const AT = new Date('2025-11-24T12:00:00Z')
const tool: CardTool = {
  code: '14',
  name: 'Low-angle jack iron',
  dotCorner: 'left',
  who: 'Ines Varr',
  jobCode: 'J0611',
  rotation: 'intoEdge',
  measuredAt: '2025-11-20T12:00:00Z',
}
const longName = `Iron with a long name 刨 🪚 e\u0301\u200b Řezník\n${'and more '.repeat(10)}`.slice(0, 120)
const oneWord = 'W'.repeat(120)
const cautions = [
  { code: 'shavingDeeperThanCamber', params: { shavingDepthMm: 0.1, woodReliefMm: 0.03 } },
  { code: 'wheelNarrow', params: { coverMm: 35, halfWidthMm: 60 } },
  { code: 'edgeMoves', params: {} },
]

const chisel = sampleJob({
  blade: { widthMm: 6, thicknessMm: 5, seatAngleDeg: null, bevelSide: 'down' },
  fixture: { kind: 'square', seatOffsetMm: -20 },
  aim: { projectionMm: 60, reliefMm: 0 },
})
const wide = sampleJob({
  blade: { widthMm: 120 },
  aim: { projectionMm: 400, task: 'freshen' },
  motion: { stopTurnsLeft: 0.75, stopTurnsRight: 0.75, fingerReachMm: 100 },
  station: { barOffsetMm: 300 },
})
const uneven = sampleJob({ motion: { stopTurnsLeft: 1.25, stopTurnsRight: 0.75 } })
const byYaw = sampleJob({
  fixture: { guideArmMm: null, screwPitchMm: null },
  motion: { yawLeftDeg: 1.2, yawRightDeg: 1.5 },
})

const cases: readonly (readonly [string, Job, CardTool])[] = [
  ['a steered reshape', sampleJob(), tool],
  ['a square chisel 6 mm wide, generic', chisel, toolOfJob(chisel)],
  ['a wide freshen with a long name', wide, { ...tool, dotCorner: 'right', code: 'ABCDEFGH1234', name: longName }],
  ['one word as a name, uneven stops', uneven, { ...tool, name: oneWord, who: oneWord, rotation: 'awayFromEdge' }],
  ['stops by yaw alone', byYaw, tool],
]

const typefaces = loadTypefaces()

const laidOut = new Map<string, readonly Item[]>()

/** Laid out once, however many tests look at it: the measuring of its words takes a fifth of a second. */
const layOut = (job: Job, who: CardTool, unit: 'mm' | 'inch' | 'thou' = 'mm'): readonly Item[] => {
  const key = JSON.stringify([job, who, unit])
  const items =
    laidOut.get(key) ?? layOutCard(factsOf(job, { ...sampleReport(job), cautions }, who, AT, unit), typefaces)
  laidOut.set(key, items)
  return items
}

const textsOf = (items: readonly Item[]): TextItem[] => items.filter((item) => item.kind === 'text')
const wordsOf = (items: readonly Item[]): string[] => textsOf(items).map(({ text }) => text)
const figureHeights = (items: readonly Item[], text: string): number[] =>
  textsOf(items)
    .filter((item) => item.text === text && item.face === 'figure')
    .map(({ sizeMm }) => sizeMm * FIGURE_SHARE)

const overlap = ({ box: a }: TextItem, { box: b }: TextItem): boolean =>
  Math.min(a.xMm + a.widthMm, b.xMm + b.widthMm) - Math.max(a.xMm, b.xMm) > 0.05 &&
  Math.min(a.yMm + a.heightMm, b.yMm + b.heightMm) - Math.max(a.yMm, b.yMm) > 0.05

const collisions = (items: readonly Item[]): string[] => {
  const texts = textsOf(items)
  return texts.flatMap((one, i) =>
    texts
      .slice(i + 1)
      .filter((other) => one.text !== '' && other.text !== '' && overlap(one, other))
      .map((other) => `${one.text} / ${other.text}`),
  )
}

const pointsOf = (item: Item): readonly (readonly [number, number])[] => {
  if (item.kind === 'shape') return item.outlines.flat()
  const { xMm, yMm, widthMm, heightMm } = item.box
  return [
    [xMm, yMm],
    [xMm + widthMm, yMm + heightMm],
  ]
}

describe.each(cases)('the card of %s', (_, job, who) => {
  it.each(['mm', 'inch', 'thou'] as const)('keeps its texts apart, in %s', (unit) => {
    expect(collisions(layOut(job, who, unit))).toEqual([])
  })

  it('stays five millimetres inside the page', () => {
    for (const [xMm, yMm] of layOut(job, who).flatMap(pointsOf)) {
      expect(xMm).toBeGreaterThan(5)
      expect(xMm).toBeLessThan(PAGE.widthMm - 5)
      expect(yMm).toBeGreaterThan(5)
      expect(yMm).toBeLessThan(PAGE.heightMm - 5)
    }
  })

  it('is written as a file', async () => {
    const bytes = await cardOfJob(job, { ...sampleReport(job), cautions }, who, AT)
    expect((await PDFDocument.load(bytes)).getPageCount()).toBe(1)
  })
})

describe('what the card says', () => {
  it('gives the figures of the report, large ones 18 mm high', () => {
    const items = layOut(sampleJob(), tool)
    for (const text of ['130.0', '76.6', '2']) {
      const heights = figureHeights(items, text)
      expect(heights.length, text).toBe(text === '2' ? 2 : 1)
      for (const heightMm of heights) expect(heightMm).toBeGreaterThanOrEqual(18 - 1e-9)
    }
    expect(wordsOf(items)).toContain('1.60 mm free play each')
    expect(wordsOf(items)).toContain('82.6')
  })

  it('gives wheel, reach and leaves 10 mm high', () => {
    const items = layOut(sampleJob(), tool)
    for (const text of ['250.0', '26', '0.13', '0.50']) {
      expect(figureHeights(items, text)[0], text).toBeGreaterThanOrEqual(10 - 1e-9)
    }
  })

  it('keeps four figures and a point at full height', () => {
    expect(figureHeights(layOut(wide, tool), '400.0')[0]).toBeGreaterThanOrEqual(18 - 1e-9)
  })

  it('shrinks a pair that does not fit, and never cuts a figure', () => {
    const code = 'W'.repeat(12)
    const items = layOut(uneven, { ...tool, name: oneWord, code })
    expect(wordsOf(items)).toEqual(
      expect.arrayContaining([code, '1.25', '0.75', 'free play 1.00 mm left, 0.60 mm right']),
    )
    expect(textsOf(items).filter(({ face, text }) => face === 'figure' && text.includes('…'))).toEqual([])
  })

  it('shows yaw where the arm is not known', () => {
    expect(wordsOf(layOut(byYaw, tool))).toEqual(expect.arrayContaining(['1.20°', '1.50°']))
  })

  it('tells the task and when to stop', () => {
    expect(wordsOf(layOut(sampleJob(), tool))).toEqual(expect.arrayContaining(['RESHAPE', 'burr all', 'along']))
    expect(wordsOf(layOut(wide, tool))).toEqual(expect.arrayContaining(['FRESHEN', '0.4']))
    expect(wordsOf(layOut(chisel, tool))).toContain('square')
  })

  it('sets all its words without cutting one, where there are no cautions', () => {
    const items = layOutCard(factsOf(sampleJob(), sampleReport(sampleJob()), tool, AT, 'mm'), typefaces)
    expect(wordsOf(items).filter((text) => text.includes('…'))).toEqual([])
    expect(wordsOf(items).join(' ')).toMatch(/along its length\..*this card is no substitute\./)
  })

  it('leaves no catalogue key or gap untranslated', () => {
    for (const [, job, who] of cases) {
      const words = wordsOf(layOut(job, who)).join(' ')
      expect(words).not.toMatch(/\{\{|undefined|null|NaN|[a-z][A-Z]|card:/)
    }
  })

  it('replaces what the typeface lacks and keeps accents', () => {
    expect(typefaces.printable('Řezník 刨 e\u0301\u200b\n🪚', 'strong')).toBe('Řezník ? é ?')
  })
})

/** A name from all of Unicode, halves of pairs included; a multiplicative generator modulo the prime 2^31 - 1. */
const anyCharacters = (seed: number): string => {
  let state = seed
  return Array.from({ length: 60 }, () => {
    state = (state * 48_271) % 2_147_483_647
    return String.fromCodePoint(state % 0x11_0000)
  })
    .join('')
    .slice(0, 119)
}

describe('the file', () => {
  it('is one A4 page on its side, with embedded typefaces only', async () => {
    const pdf = await PDFDocument.load(await cardOfJob(sampleJob(), sampleReport(sampleJob()), tool, AT))
    const { width, height } = pdf.getPage(0).getSize()
    expect(width).toBeCloseTo(841.89, 2)
    expect(height).toBeCloseTo(595.28, 2)
    const dicts = pdf.context
      .enumerateIndirectObjects()
      .flatMap(([, object]) => (object instanceof PDFDict ? [object] : []))
    const named = (key: string, value: string) =>
      dicts.filter((dict) => dict.get(PDFName.of(key)) === PDFName.of(value))
    expect(named('Subtype', 'Type1')).toEqual([])
    const descriptors = named('Type', 'FontDescriptor')
    expect(descriptors).toHaveLength(3)
    for (const dict of descriptors) expect(dict.get(PDFName.of('FontFile2'))).toBeInstanceOf(PDFRef)
  })

  it.each([1, 2, 3])('is written for names of any characters, seed %i', async (seed) => {
    const words = anyCharacters(seed)
    const strange = { ...tool, code: words.slice(0, 12), name: words, who: words, jobCode: words.slice(3, 9) }
    const bytes = await cardOfJob(sampleJob(), sampleReport(sampleJob()), strange, AT)
    expect((await PDFDocument.load(bytes)).getPageCount()).toBe(1)
  })

  it('is the same to the byte for the same input', async () => {
    const make = () => cardOfJob(sampleJob(), sampleReport(sampleJob()), tool, AT)
    const first = Buffer.from(await make())
    expect(first.equals(Buffer.from(await make()))).toBe(true)
    const other = await cardOfJob(sampleJob(), sampleReport(sampleJob()), { ...tool, code: '15' }, AT)
    expect(first.equals(Buffer.from(other))).toBe(false)
  })
})
