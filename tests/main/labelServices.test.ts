import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ok } from '../../geometry/result.ts'
import { labelSheets } from '../../main/contract/labelSheets.ts'
import { createMaker } from '../../main/makerThread.ts'
import { createBlobs } from '../../main/workshop/blobs.ts'
import { type Bench, codesOf, openOwnBench, stationDraft, steeredDraft, temporaryFolder, toolDraft } from './support.ts'

const place = temporaryFolder()
const blobs = createBlobs()
const drawn: unknown[] = []
let bench: Bench
let toolId: string
let stationId: string
let fixtureId: string
let placeId: string

beforeAll(async () => {
  const makeLabels = async (given: readonly unknown[]) => {
    drawn.push(...given)
    return ok({ bytes: new Uint8Array([37]), fileName: 'labels.pdf' })
  }
  bench = await openOwnBench(place.folder, { makeLabels, blobs }, () => crypto.randomUUID())
  toolId = (await bench.done('tool.add', toolDraft)).value.id
  stationId = (await bench.done('station.add', stationDraft)).value.id
  fixtureId = (await bench.done('fixture.add', steeredDraft)).value.id
  const parentId = (await bench.done('place.add', { name: 'Bench room' })).value.id
  placeId = (await bench.done('place.add', { name: 'Drawer 3', parentId })).value.id
})
afterAll(async () => {
  await bench.workshop.close()
  place.remove()
})

const [sheet] = labelSheets
const order = (first = 1) => ({ items: [{ noun: 'tool' as const, id: toolId }], sheet, first })

describe('code.find', () => {
  it.each([
    ['01', 'tool', 'Try plane iron'],
    ['1', 'tool', 'Try plane iron'],
    ['CW:01/J7', 'tool', 'Try plane iron'],
    ['s1', 'station', 'Wet wheel'],
    ['F1', 'fixture', 'Steered'],
    ['p2', 'place', 'Drawer 3'],
  ])('knows “%s” as a %s', async (code, noun, name) => {
    expect(await bench.done('code.find', { code })).toMatchObject({ noun, name, removed: false })
  })

  it('says that there is no such code, and which stood for something deleted', async () => {
    expect(await bench.done('code.find', { code: '99' })).toBeNull()
    expect(await bench.done('code.find', { code: 'try plane' })).toBeNull()
    const { value } = await bench.done('tool.add', { ...toolDraft, name: 'Lost iron' })
    await bench.done('tool.remove', { id: value.id, version: value.version })
    expect(await bench.done('code.find', { code: value.code })).toEqual({
      ...{ noun: 'tool', id: value.id, code: value.code, name: 'Lost iron', removed: true },
    })
  })
})

describe('label.make', () => {
  it('draws what the rack holds, in the workshop’s unit, from the position asked for', async () => {
    await bench.done('settings.edit', { lengthUnit: 'inch', theme: 'system' })
    const items = [
      { noun: 'tool' as const, id: toolId },
      { noun: 'station' as const, id: stationId },
      { noun: 'fixture' as const, id: fixtureId },
      { noun: 'place' as const, id: placeId },
    ]
    const made = await bench.done('label.make', { items, sheet, first: 5 })
    expect(drawn.slice(0, 2)).toEqual([
      [
        { code: '01', name: 'Try plane iron', line: '2.362 × 0.118\u00a0in', dot: 'left' },
        { code: 'S1', name: 'Wet wheel', line: 'station', dot: null },
        { code: 'F1', name: 'Steered', line: 'fixture, steered', dot: null },
        { code: 'P2', name: 'Drawer 3', line: 'Bench room', dot: null },
      ],
      { sheet, first: 5, outlines: false },
    ])
    expect(blobs.get(made.blobId)).toMatchObject({ fileName: 'labels.pdf', mediaType: 'application/pdf' })
  })

  it('refuses a position that the sheet has not, a sheet that cannot be, and what is no longer there', async () => {
    expect(codesOf(await bench.call('label.make', order(22)))).toEqual(['labelFirstBeyond'])
    const wide = { ...order(), sheet: { ...sheet, columns: 4 } }
    expect(codesOf(await bench.call('label.make', wide))).toEqual(['labelsBeyondPaper'])
    const gone = { ...order(), items: [{ noun: 'station' as const, id: toolId }] }
    expect(codesOf(await bench.call('label.make', gone))).toEqual(['noLongerThere'])
    expect(codesOf(await bench.call('label.make', { ...order(), items: [] }))).toEqual(['tooFew'])
  })

  it('is drawn by the maker on its own thread', async () => {
    const maker = createMaker()
    const facts = [{ code: '14', name: 'Jack iron', line: '', dot: null }]
    const given = [facts, { sheet, first: 1, outlines: true }, new Date('2026-01-05T12:00:00Z')] as const
    const made = await maker.makeLabels([...given], new AbortController().signal)
    await maker.close()
    expect(made).toMatchObject({ ok: true, value: { fileName: 'label-14.pdf' } })
    expect(made.ok && Buffer.from(made.value.bytes).subarray(0, 5).toString()).toBe('%PDF-')
  })
})
