import BetterSqlite from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { listCopies } from '../../main/backup/copies.ts'
import { type FileBench, openFileBench } from './inOutSupport.ts'
import { documentOf } from './randomRack.ts'
import { codesOf, stationDraft, temporaryFolder, toolDraft, toolsOf } from './support.ts'

let place: ReturnType<typeof temporaryFolder>
let bench: FileBench
beforeEach(async () => {
  place = temporaryFolder()
  bench = await openFileBench(place.folder)
})
afterEach(async () => {
  await bench.workshop.close()
  place.remove()
})

const table = (...lines: readonly string[]): string => lines.join('\n')
const HEAD =
  'code,name,kind,widthMm,thicknessMm,seatAngleDeg,bevelSide,bevelAngleDeg,projectionMm,reliefMm,shavingDepthMm'
const rest = (width: number | string) => `try,${width},3,45,down,25,130,0.14,0.08`
const tools = () => toolsOf(bench)
const counts = (added: number, changed: number, same: number, faulty = 0, back = 0) => [
  { noun: 'tool', added, changed, back, same, faulty },
]

describe('bringing a table in', () => {
  it('adds what is new, changes what differs, leaves the rest, and does nothing the second time', async () => {
    await bench.done('tool.add', { ...toolDraft, name: 'one' })
    await bench.done('tool.add', { ...toolDraft, name: 'two' })
    const file = table(HEAD, `1,one,${rest(60)}`, `2,two,${rest(61.5)}`, `07,three,${rest(62)}`)
    expect((await bench.look(file)).counts).toEqual(counts(1, 1, 1))
    expect(await tools()).toHaveLength(2)
    expect((await bench.bring(file)).counts).toEqual(counts(1, 1, 1))
    expect((await tools()).map(({ code, name, widthMm, place }) => [code, name, widthMm, place])).toEqual([
      ['01', 'one', 60, ''],
      ['02', 'two', 61.5, ''],
      ['07', 'three', 62, ''],
    ])
    expect(await bench.bring(file)).toEqual({ counts: counts(0, 0, 3), changeId: 0 })
    // The counter goes past what came in, so that no code comes again.
    expect((await bench.done('tool.add', toolDraft)).value.code).toBe('08')
  })

  it('speaks only of the columns it has: the others stay as they are', async () => {
    await bench.done('tool.add', { ...toolDraft, note: 'kept dry', steel: 'O1' })
    await bench.bring(table('code,steel', '01,A2'))
    expect(await tools()).toMatchObject([{ ...toolDraft, note: 'kept dry', steel: 'A2' }])
    expect(
      (await bench.look(table('code,steel', '02,A2'))).faults.map(({ column, code }) => [column, code]),
    ).toContainEqual(['name', 'missing'])
  })

  it('can be had back whole by one undo, and the undo by another', async () => {
    await bench.done('tool.add', { ...toolDraft, name: 'one' })
    const { changeId } = await bench.bring(table(HEAD, `1,uno,${rest(60)}`, `2,due,${rest(60)}`, `3,tre,${rest(60)}`))
    const [line] = await bench.done('change.list', {})
    expect(line).toMatchObject({ id: changeId, together: 3 })
    const { id } = await bench.done('change.undo', { id: changeId })
    expect((await tools()).map(({ name }) => name)).toEqual(['one'])
    await bench.done('change.undo', { id })
    expect((await tools()).map(({ name }) => name)).toEqual(['uno', 'due', 'tre'])
  })

  it('has back from the scrap box what lies there under the same code', async () => {
    const { value: tool } = await bench.done('tool.add', toolDraft)
    await bench.done('tool.remove', { id: tool.id, version: 1 })
    const file = table(HEAD, `1,again,${rest(60)}`)
    expect((await bench.bring(file)).counts).toEqual(counts(0, 0, 0, 0, 1))
    expect(await tools()).toMatchObject([{ id: tool.id, code: '01', name: 'again' }])
  })

  it('finds what was brought in by its words, as if it had been typed', async () => {
    await bench.bring(table(`${HEAD},note`, `1,Böttcher's iron,${rest(60)},on the window sill`))
    expect(await toolsOf(bench, 'bott sill')).toHaveLength(1)
  })

  it('names other records by code or by name, also one of the same file', async () => {
    await bench.bring(table('code,name,parent', 'P2,drawer,P1', 'P1,cabinet,', 'P3,tray,drawer'), { noun: 'place' })
    await bench.bring(table(`${HEAD},place`, `1,a,${rest(60)},Drawer`, `2,b,${rest(60)},p3`))
    expect((await tools()).map((tool) => tool.place)).toEqual(['cabinet / drawer', 'cabinet / drawer / tray'])
    const { faults } = await bench.look(table('code,place', '1,attic'))
    expect(faults).toEqual([
      { noun: 'tool', row: 2, column: 'place', code: 'notKnown', params: { words: 'attic', noun: 'place' } },
    ])
  })

  it('takes places in any order, also where hundreds lie between one and the one it stands in', async () => {
    const drawers = Array.from({ length: 150 }, (_, i) => `P${i + 1},drawer ${i},P200`)
    await bench.bring(table('code,name,parent', ...drawers, 'P200,cabinet,'), { noun: 'place' })
    expect(await bench.done('place.list', {})).toHaveLength(151)
  })

  it('makes a copy of the data first', async () => {
    const before = listCopies(bench.workshop.path())[0]?.name
    await bench.bring(table(HEAD, `1,a,${rest(60)}`))
    expect(listCopies(bench.workshop.path())[0]?.name).not.toBe(before)
  })
})

describe('what a table says', () => {
  const head = (names: string) =>
    `number;tool name;kind;${names};seat angle (deg);bevel side;bevel angle;projection;relief;shaving depth`
  const line = (kind: string, width: string, thickness: string) =>
    `1;Iron;${kind};${width};${thickness};45;bevel down;25;130 mm;0,14;2 thou`

  it('reads units from the head or the cell, decimal commas, and the words of choices', async () => {
    const file = table(
      head('width in;thickness (mm)').replace('tool name', 'Name'),
      line('Try Plane Iron', '2 3/8', '3,2'),
    )
    await bench.bring(file)
    const [tool] = await tools()
    expect(tool).toMatchObject({ kind: 'try', widthMm: 60.325, thicknessMm: 3.2, bevelSide: 'down', projectionMm: 130 })
    expect(tool).toMatchObject({ reliefMm: 0.14, shavingDepthMm: 0.0508 })
  })

  it('is in the unit of the workshop where the head names none, and as the user says where he says so', async () => {
    await bench.done('settings.edit', { lengthUnit: 'inch' })
    const file = table('code,width,thicknessMm', '1,2.25,3')
    const { table: shown } = await bench.look(file)
    expect(shown?.columns.map(({ key, lengthUnit }) => [key, lengthUnit])).toEqual([
      ['code', 'mm'],
      ['widthMm', 'inch'],
      ['thicknessMm', 'mm'],
    ])
    await bench.done('tool.add', toolDraft)
    const columns = [
      { key: 'code', lengthUnit: 'mm' },
      { key: 'thicknessMm', lengthUnit: 'thou' },
      { key: null, lengthUnit: 'mm' },
    ] as const
    await bench.bring(table('a,b,c', '1,125,9'), { columns: [...columns] })
    expect(await tools()).toMatchObject([{ widthMm: 60, thicknessMm: 3.175 }])
  })

  it.each([
    ['a figure that is none', `1,a,${rest('wide')}`, 'widthMm', 'figureUnreadable'],
    ['a unit of something else', `1,a,${rest('60 rpm')}`, 'widthMm', 'figureWrongUnit'],
    ['a figure beyond the table', `1,a,${rest(600)}`, 'widthMm', 'tooLarge'],
    ['an empty cell that has to be filled', `1,,${rest(60)}`, 'name', 'missing'],
    ['a kind that there is not', `1,a,saw,60,3,45,down,25,130,0.14,0.08`, 'kind', 'notOneOf'],
    ['a code of another noun', `S1,a,${rest(60)}`, 'code', 'codeForm'],
    ['more cells than heads', `1,a,${rest(60)},x`, '', 'rowTooLong'],
    ['half a character', `1,a\ud800,${rest(60)}`, 'name', 'textBroken'],
  ])('is told by line and column: %s', async (_, row, column, code) => {
    const file = table(HEAD, `9,good,${rest(60)}`, row)
    // A broken text cannot be in a file of this kind; it is handed on as our own document can hold it.
    const content = row.includes('\ud800') ? documentOf({ tool: [toolDraft, { ...toolDraft, name: 'a\ud800' }] }) : file
    const { faults, counts: told } = await bench.look(content)
    expect(faults.map((fault) => [fault.column, fault.code])).toEqual([[column, code]])
    expect(faults[0]?.row).toBe(content === file ? 3 : 2)
    expect(told).toEqual(counts(1, 0, 0, 1))
    expect(codesOf(await bench.call('inOut.bring', { blobId: bench.put(content) }))).toEqual(['fileFaulty'])
    expect(await tools()).toEqual([])
    await bench.bring(content, { leaveOut: true })
    expect(await tools()).toHaveLength(1)
  })

  it('is refused where a code comes twice', async () => {
    const { faults } = await bench.look(table(HEAD, `1,a,${rest(60)}`, `01,b,${rest(60)}`))
    expect(faults).toMatchObject([{ row: 3, column: 'code', code: 'rowTwice' }])
  })
})

describe('our own document', () => {
  it('knows a record by its id, and gives way where its code is taken', async () => {
    await bench.done('tool.add', { ...toolDraft, name: 'mine' })
    const theirs = { ...toolDraft, id: 'dddddddd-0000-4000-8000-000000000001', code: '01', name: 'theirs' }
    const file = documentOf({ tool: [theirs] })
    await bench.bring(file)
    expect((await tools()).map(({ code, name }) => [code, name])).toEqual([
      ['01', 'mine'],
      ['02', 'theirs'],
    ])
    expect((await bench.bring(file)).counts).toEqual(counts(0, 0, 1))
  })

  it('takes one tool to a colleague, with its log and without what belongs to this workshop', async () => {
    const { value: place } = await bench.done('place.add', { name: 'drawer', parentId: null, note: '' })
    const { value: tool } = await bench.done('tool.add', { ...toolDraft, placeId: place.id })
    await bench.done('tool.add', { ...toolDraft, name: 'another' })
    await bench.done('station.add', stationDraft)
    await bench.done('happening.add', { toolId: tool.id, kind: 'honed', at: '2026-01-02T08:00:00.000Z' })
    await bench.done('benchLog.add', { toolId: tool.id, stage: 'asGround', reliefLeftMm: 0.1, reliefRightMm: 0.1 })
    const file = await bench.out({ what: 'tool', toolId: tool.id, form: 'bundle' })
    // Here, where the tool came from, nothing is to be done: the file does not speak of what it leaves out.
    expect((await bench.bring(file)).counts.map(({ same, changed }) => [same, changed])).toEqual([
      [1, 0],
      [1, 0],
      [1, 0],
    ])
    const other = temporaryFolder()
    const colleague = await openFileBench(other.folder, 'cccccccc')
    const brought = await colleague.bring(file)
    expect(brought.counts.map(({ noun, added }) => [noun, added])).toEqual([
      ['tool', 1],
      ['benchLog', 1],
      ['happening', 1],
    ])
    expect(await toolsOf(colleague)).toMatchObject([{ id: tool.id, name: toolDraft.name, honings: 0 }])
    expect(await colleague.done('station.list', {})).toEqual([])
    expect(await colleague.done('place.list', {})).toEqual([])
    await colleague.workshop.close()
    other.remove()
  })

  it('leaves behind what speaks of a record in the scrap box', async () => {
    const { value: tool } = await bench.done('tool.add', toolDraft)
    await bench.done('happening.add', { toolId: tool.id, kind: 'honed', at: '2026-01-02T08:00:00.000Z' })
    await bench.done('tool.remove', { id: tool.id, version: 1 })
    const file = JSON.parse(new TextDecoder().decode(await bench.out({ what: 'rack', form: 'json' })))
    expect(file.records).toEqual({})
  })

  it.each([
    ['one holder at a time', { loan: ['B1', 'B2'] }, 'onlyOneHolder'],
    ['a record that is nowhere', { happening: ['H1'] }, 'notInRack'],
  ])('is refused row by row for %s', async (_, nouns, code) => {
    const id = (end: number) => `eeeeeeee-0000-4000-8000-00000000000${end}`
    const loan = { toolId: id(1), personId: id(2), lentAt: '2026-01-02T08:00:00.000Z' }
    const happening = { toolId: id(9), kind: 'honed', at: '2026-01-02T08:00:00.000Z', who: '' }
    const records = {
      person: [{ id: id(2), name: 'Ada' }],
      tool: [{ id: id(1), ...toolDraft }],
      ...('loan' in nouns ? { loan: [loan, loan] } : { happening: [happening] }),
    }
    expect((await bench.look(documentOf(records))).faults).toMatchObject([{ code }])
  })

  it('is refused for places that stand in a circle', async () => {
    const id = (end: number) => `eeeeeeee-0000-4000-8000-00000000000${end}`
    const place = [
      { id: id(1), name: 'a', parentId: id(2) },
      { id: id(2), name: 'b', parentId: id(1) },
    ]
    const { faults } = await bench.look(documentOf({ place }))
    expect(faults.map(({ row, code }) => [row, code])).toEqual([
      [1, 'placesTooDeep'],
      [2, 'placesTooDeep'],
    ])
  })

  it.each([
    ['something else', '{"form":"other","formVersion":1,"records":{}}', 'notARackFile'],
    ['broken JSON', '{"form":', 'notARackFile'],
    ['a later form', '{"form":"camberwright rack","formVersion":2,"records":{}}', 'rackFileTooNew'],
    ['a noun there is not', '{"form":"camberwright rack","formVersion":1,"records":{"saw":[]}}', 'unknownField'],
  ])('is refused whole where it is %s', async (_, text, code) => {
    expect(codesOf(await bench.call('inOut.look', { blobId: bench.put(text) }))).toEqual([code])
  })

  it('refuses an entry that it does not know, and does not follow it anywhere', async () => {
    const file =
      '{"form":"camberwright rack","formVersion":1,"records":{"purpose":[{"name":"a","__proto__":{"x":1},"y":2},3]}}'
    const { faults } = await bench.look(file)
    expect(faults.map(({ row, code }) => [row, code])).toEqual([
      [1, 'unknownField'],
      [1, 'unknownField'],
      [2, 'wrongType'],
    ])
    expect('x' in {}).toBe(false)
  })
})

describe('a long file', () => {
  const many = table(HEAD, ...Array.from({ length: 5000 }, (_, i) => `${i + 1},iron ${i},${rest(40 + (i % 30))}`))

  it('tells how far it is, and stopped half-way leaves nothing', async () => {
    const blobId = bench.put(many)
    const running = bench.call('inOut.bring', { blobId }, 'long')
    // Stopped once rows are being written.
    const stop = setInterval(() => {
      if (bench.events.some((event) => event.type === 'progress' && event.done > 0.4)) bench.cancel('long')
    }, 1)
    expect(codesOf(await running)).toEqual(['cancelled'])
    clearInterval(stop)
    const steps = bench.events.flatMap((event) => (event.type === 'progress' ? [event.done] : []))
    expect(steps.length).toBeGreaterThan(10)
    expect(steps).toEqual([...steps].sort((a, b) => a - b))
    expect(await tools()).toEqual([])
    expect(await bench.done('change.list', {})).toEqual([])
    expect((await bench.done('tool.add', toolDraft)).value.code).toBe('01')
    await bench.workshop.close()
    const file = new BetterSqlite(`${place.folder}/own.db`, { readonly: true })
    expect(file.pragma('integrity_check', { simple: true })).toBe('ok')
    file.close()
  })

  it('is gone when it was handed in too long ago', async () => {
    expect(codesOf(await bench.call('inOut.look', { blobId: crypto.randomUUID() }))).toEqual(['fileGone'])
  })
})
