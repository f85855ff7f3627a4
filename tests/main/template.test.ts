import { PDFDocument } from 'pdf-lib'
import { describe, expect, it } from 'vitest'
import { planOf } from '../../geometry/aim.ts'
import { aimCurveOver } from '../../geometry/aimCurve.ts'
import { behindAt, type Profile } from '../../geometry/profile.ts'
import { PAGE } from '../../main/cards/sheet.ts'
import { loadTypefaces } from '../../main/cards/typefaces.ts'
import { writePdf } from '../../main/cards/writePdf.ts'
import { depthFactor, wantedProfile } from '../../main/template/curves.ts'
import { writeDxf } from '../../main/template/dxf.ts'
import { type Layer, layOutTemplate, type TemplateFacts } from '../../main/template/layOut.ts'
import { writeSvg } from '../../main/template/svg.ts'
import { createTexts } from '../../main/texts.ts'
import { found } from '../geometry/example.ts'
import { contentOf } from '../support/pdfContent.ts'
import { sampleJob } from './cardSample.ts'

const AT = new Date('2025-11-24T12:00:00Z')
const typefaces = loadTypefaces()
const POINTS_PER_MM = 72 / 25.4

type Point = readonly [number, number]

/** Width and relief of an iron, and the factor its depth is magnified by: the most of 44 mm that a round figure leaves. */
const irons = [
  { widthMm: 57, reliefMm: 0.5, factor: 50 },
  { widthMm: 57, reliefMm: 0.1, factor: 200 },
  { widthMm: 120, reliefMm: 12, factor: 2 },
  { widthMm: 6, reliefMm: 2.4, factor: 10 },
] as const

const planFor = (widthMm: number, reliefMm: number) =>
  found(planOf(sampleJob({ blade: { widthMm }, aim: { reliefMm } })))

const factsFor = (widthMm: number, reliefMm: number, predicted: Profile | null = null): TemplateFacts => ({
  code: '14',
  name: 'Low-angle jack iron <É>',
  dotCorner: 'left',
  wanted: wantedProfile(planFor(widthMm, reliefMm), widthMm),
  predicted,
  figures: 'some mm wide',
  sweeps: 120,
  day: '24 Nov 2025',
  t: createTexts().getFixedT('en', 'out'),
})

const layersFor = (widthMm: number, reliefMm: number, predicted: Profile | null = null): readonly Layer[] =>
  layOutTemplate(factsFor(widthMm, reliefMm, predicted), typefaces)

/** Where the true template's middle and foremost point lie on the page, and the magnified one's. */
const TRUE_AT: Point = [74, 84]
const MAGNIFIED_AT: Point = [223, 84]

/** The engine's curve. */
const engineAt = (widthMm: number, reliefMm: number) => found(aimCurveOver({ kind: 'arc', reliefMm }, widthMm))

/** An outline's edge: all its points but the two that close it behind. */
const edgeOf = (outline: readonly Point[]): readonly Point[] => outline.slice(0, -2)

const expectOnCurve = (
  edge: readonly Point[],
  [middleMm, foremostMm]: Point,
  at: (uMm: number) => number,
  factor: number,
  withinMm: number,
): void => {
  for (const [x, y] of edge) expect(Math.abs((y - foremostMm) / factor - at(x - middleMm))).toBeLessThan(withinMm)
}

/** Least distance of a point from the chords of an edge. */
const offEdge = (edge: readonly Point[], [px, py]: Point): number =>
  Math.min(
    ...edge.slice(1).map(([bx, by], i) => {
      const [ax, ay] = edge[i] as Point
      const along = ((px - ax) * (bx - ax) + (py - ay) * (by - ay)) / ((bx - ax) ** 2 + (by - ay) ** 2)
      const share = Math.min(Math.max(along, 0), 1)
      return Math.hypot(px - ax - share * (bx - ax), py - ay - share * (by - ay))
    }),
  )

const svgOutlines = (svg: string, group: string): Point[][] => {
  const inside = new RegExp(`<g id="${group}">([^]*?)</g>`).exec(svg)?.[1] ?? ''
  return Array.from(inside.matchAll(/ d="([^"]+)"/g), ([, path]) =>
    Array.from((path as string).matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g), ([, x, y]): Point => [Number(x), Number(y)]),
  )
}

describe.each(irons)('the template of $widthMm mm with $reliefMm mm of relief', ({ widthMm, reliefMm, factor }) => {
  const layers = layersFor(widthMm, reliefMm)
  const svg = writeSvg(layers, 'title')
  const [trueEdge, magnified] = svgOutlines(svg, 'edge').map(edgeOf) as [Point[], Point[]]
  const at = engineAt(widthMm, reliefMm)

  it('holds the engine’s curve to a thousandth of a millimetre, at its points and between them', () => {
    expectOnCurve(trueEdge, TRUE_AT, at, 1, 1e-3)
    for (let u = -widthMm / 2; u <= widthMm / 2; u += widthMm / 333) {
      expect(offEdge(trueEdge, [TRUE_AT[0] + u, TRUE_AT[1] + at(u)])).toBeLessThan(1e-3)
    }
  })

  it('is as wide as the iron, and as deep as the relief times the factor written on it', () => {
    for (const [edge, depth] of [
      [trueEdge, 1],
      [magnified, factor],
    ] as const) {
      expect((edge.at(-1)?.[0] ?? 0) - (edge[0]?.[0] ?? 0)).toBeCloseTo(widthMm, 3)
      expect((edge[0]?.[1] ?? 0) - 84).toBeCloseTo(reliefMm * depth, 3)
    }
    expectOnCurve(magnified, MAGNIFIED_AT, at, factor, 1e-3)
    expect(svg).toContain(`depth × ${factor}: to look at only`)
  })

  it('stays five millimetres inside the page', () => {
    const points = layers.flatMap(({ items }) =>
      items.flatMap((item): readonly Point[] =>
        item.kind === 'shape'
          ? item.outlines.flat()
          : [
              [item.box.xMm, item.box.yMm],
              [item.box.xMm + item.box.widthMm, item.box.yMm + item.box.heightMm],
            ],
      ),
    )
    for (const [x, y] of points) {
      expect(Math.min(x, PAGE.widthMm - x)).toBeGreaterThan(5)
      expect(Math.min(y, PAGE.heightMm - y)).toBeGreaterThan(5)
    }
  })
})

describe('the template', () => {
  it('draws the predicted edge beside the wanted one, and says so', () => {
    const uMm = [-28.5, 0, 28.5]
    const predicted: Profile = { uMm, behindMm: [0.61, 0, 0.44] }
    const svg = writeSvg(layersFor(57, 0.5, predicted), 'title')
    const [line] = svgOutlines(svg, 'predicted') as [Point[]]
    for (const [x, y] of line) expect(y - 84).toBeCloseTo(behindAt(predicted, x - 74), 3)
    expect(svg).toContain('predicted after 120 sweeps')
  })

  it('of a straight edge has no second one, for there is nothing to magnify', () => {
    expect(svgOutlines(writeSvg(layersFor(57, 0), 'title'), 'edge')).toHaveLength(1)
  })

  it('magnifies by round figures only, as far as there is room', () => {
    expect([0, 0.1, 0.5, 9, 50].map((mm) => depthFactor(mm, 44))).toEqual([1, 200, 50, 2, 1])
  })

  it('as SVG measures in millimetres and escapes what it is named', () => {
    const svg = writeSvg(layersFor(57, 0.5), 'A & B <C>')
    expect(svg).toContain('width="297mm" height="210mm" viewBox="0 0 297 210"')
    expect(svg).toContain('<title>A &amp; B &lt;C&gt;</title>')
    expect(svg).toContain('iron &lt;É&gt;')
    const [metric] = svgOutlines(svg, 'scale') as [Point[]]
    expect([metric[0], metric[1]]).toEqual([
      [10, 47],
      [110, 47],
    ])
  })
})

interface Entity {
  readonly type: string
  readonly groups: (readonly [number, string])[]
}

/** A DXF read group by group. @returns its groups and the entities of its ENTITIES section */
const readDxf = (text: string) => {
  const lines = text.split('\r\n')
  expect(lines.pop()).toBe('')
  expect(lines.length % 2).toBe(0)
  const groups = Array.from({ length: lines.length / 2 }, (_, k): readonly [number, string] => {
    expect(lines[2 * k]).toMatch(/^ {0,2}\d{1,3}$/)
    return [Number(lines[2 * k]), lines[2 * k + 1] as string]
  })
  const from = groups.findIndex(([code, value]) => code === 2 && value === 'ENTITIES')
  const entities: Entity[] = []
  for (const [code, value] of groups.slice(from + 1)) {
    if (code === 0) entities.push({ type: value, groups: [] })
    else entities.at(-1)?.groups.push([code, value])
  }
  return { groups, entities }
}

const dxfValue = ({ groups }: Entity, code: number): string => groups.find(([at]) => at === code)?.[1] ?? ''

describe('the template as DXF', () => {
  const { groups, entities } = readDxf(writeDxf(layersFor(57, 0.5), 'Template É', 'Units: millimetres.'))

  it('is of release 12, plain ASCII, says its unit, and ends as it must', () => {
    expect(groups.slice(0, 2)).toEqual([
      [999, 'Template E'],
      [999, 'Units: millimetres.'],
    ])
    expect(groups).toContainEqual([1, 'AC1009'])
    expect(groups.at(-1)).toEqual([0, 'EOF'])
    for (const [, value] of groups) expect(value).toMatch(/^[ -~]*$/)
    expect(groups.filter(([code, value]) => code === 0 && value === 'SECTION')).toHaveLength(3)
    expect(groups.filter(([code, value]) => code === 0 && value === 'ENDSEC')).toHaveLength(3)
  })

  it('holds nothing that release 12 does not know, every outline closed by its SEQEND', () => {
    const kinds = new Set(entities.map(({ type }) => type))
    expect([...kinds].sort()).toEqual(['ENDSEC', 'EOF', 'POLYLINE', 'SEQEND', 'TEXT', 'VERTEX'])
    const count = (type: string) => entities.filter((entity) => entity.type === type).length
    expect(count('SEQEND')).toBe(count('POLYLINE'))
    for (const entity of entities.filter(({ type }) => type === 'POLYLINE')) expect(dxfValue(entity, 66)).toBe('1')
  })

  it('holds the engine’s curve with y upwards, and layers by name', () => {
    const from = entities.findIndex((entity) => entity.type === 'POLYLINE' && dxfValue(entity, 8) === 'EDGE')
    const vertices = entities.slice(
      from + 1,
      entities.findIndex(({ type }, k) => k > from && type === 'SEQEND'),
    )
    const edge = edgeOf(vertices.map((v): Point => [Number(dxfValue(v, 10)), PAGE.heightMm - Number(dxfValue(v, 20))]))
    expect(edge).toHaveLength(401)
    expectOnCurve(edge, TRUE_AT, engineAt(57, 0.5), 1, 1e-5)
    expect(dxfValue(entities[from] as Entity, 70)).toBe('1')
    const named = groups.filter(([code], k) => code === 2 && groups[k - 1]?.[1] === 'LAYER').map(([, name]) => name)
    for (const entity of entities.filter(({ type }) => type === 'VERTEX')) expect(named).toContain(dxfValue(entity, 8))
  })
})

describe('the template as PDF', () => {
  it('is an A4 page whose metric bar is 283.46 points long, and whose inch bar is 288', async () => {
    const items = layersFor(57, 0.5).flatMap((layer) => layer.items)
    const bytes = await writePdf(items, typefaces, { title: 'template', program: 'test', at: AT })
    const { width, height } = (await PDFDocument.load(bytes)).getPage(0).getSize()
    expect([width / POINTS_PER_MM, height / POINTS_PER_MM]).toEqual([expect.closeTo(297, 6), expect.closeTo(210, 6)])
    const content = await contentOf(bytes)
    const bar = (fromMm: string, toMm: string): number => {
      const drawn = new RegExp(`([\\d.]+) 0 0 -\\1 0 0 cm\\s(?:(?!cm)[^])*?${fromMm} 47 m\\s+(${toMm}) 47 l`).exec(
        content,
      )
      return Number(drawn?.[1]) * (Number(drawn?.[2]) - Number(fromMm))
    }
    expect(bar('10', '110')).toBeCloseTo(283.46, 2)
    expect(bar('150', '251.6')).toBeCloseTo(288, 2)
  })
})
