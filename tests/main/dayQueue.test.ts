import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { makeCards } from '../../main/cards/makeCard.ts'
import { localDay } from '../../main/contract/days.ts'
import { makeDaySheet } from '../../main/work/makeDaySheet.ts'
import { createBlobs } from '../../main/workshop/blobs.ts'
import {
  type Bench,
  codesOf,
  openOwnBench,
  squareDraft,
  stationDraft,
  steeredDraft,
  temporaryFolder,
  toolDraft,
} from './support.ts'

/** The day of the test's clock. */
const TODAY = localDay(new Date('2026-01-05T08:00:00.000Z'))

let folder: ReturnType<typeof temporaryFolder>
let bench: Bench
const blobs = createBlobs()
const given: unknown[][] = []
beforeEach(async () => {
  folder = temporaryFolder()
  given.length = 0
  bench = await openOwnBench(folder.folder, {
    blobs,
    makeCards: (cards) => makeCards(...cards),
    makeDaySheet: (sheet) => {
      given.push([...sheet])
      return makeDaySheet(...sheet)
    },
  })
  await bench.done('station.add', stationDraft)
  await bench.done('fixture.add', steeredDraft)
  await bench.done('fixture.add', squareDraft)
})
afterEach(async () => {
  await bench.workshop.close()
  folder.remove()
})

const add = async (change: Partial<typeof toolDraft> = {}) =>
  (await bench.done('tool.add', { ...toolDraft, ...change })).value.id
const list = (onDay = TODAY) => bench.done('queueEntry.list', { onDay })
const codes = async (onDay = TODAY) => (await list(onDay)).lines.map(({ tool }) => tool.code)

describe('a day’s queue', () => {
  it('orders what is put on it, with bar, projection and stops of each, and says why', async () => {
    const scrub = await add({ kind: 'scrub', reliefMm: 1.4 })
    const smoothing = await add({ kind: 'smoothing', projectionMm: 120 })
    const tryPlane = await add()
    const chisel = await add({ kind: 'chisel', reliefMm: 0 })
    await bench.done('happening.add', { toolId: smoothing, kind: 'nicked', at: '2026-01-05T07:00:00.000Z' })
    await bench.done('queueEntry.add', { toolIds: [scrub, smoothing, tryPlane, chisel], onDay: TODAY })
    const { lines } = await list()
    expect(lines.map(({ tool }) => tool.code)).toEqual(['04', '03', '01', '02'])
    expect(lines.map(({ why }) => why.map(({ code }) => code))).toEqual([
      ['straight', 'first'],
      ['otherFixture'],
      ['rough', 'sameAll'],
      ['barIn'],
    ])
    // Wheel 250, seat offset 15, projection 130, bevel 25: the triangle gives 207.57, less radius and half the bar 76.57.
    expect(lines[1]?.setting?.barDistanceMm).toBeCloseTo(207.57, 2)
    expect(lines[1]?.setting).toMatchObject({
      barMm: expect.closeTo(76.57, 2),
      from: 'tool',
      turns: { left: 1, right: 1 },
      freePlay: { leftMm: 0.8, rightMm: 0.8 },
      fixture: { name: 'Steered' },
    })
    expect(lines[0]?.setting).toMatchObject({ freePlay: null, fixture: { name: 'Square' } })
  })

  it('takes bar and stops from the job in hand where there is one', async () => {
    const toolId = await add()
    const job = await bench.done('job.open', { toolId })
    const document = { ...job.document, motion: { ...job.document.motion, stopTurnsLeft: 2 } }
    await bench.done('job.edit', { id: job.id, version: job.version, document })
    await bench.done('queueEntry.add', { toolIds: [toolId], onDay: TODAY })
    expect((await list()).lines[0]?.setting).toMatchObject({ from: 'job', turns: { left: 2, right: 1 } })
  })

  it('puts what cannot be set up at the end, with the reason', async () => {
    const wide = await add({ projectionMm: 30, bevelAngleDeg: 10 })
    const sound = await add()
    await bench.done('queueEntry.add', { toolIds: [wide, sound], onDay: TODAY })
    const { lines } = await list()
    expect(lines.map(({ tool }) => tool.code)).toEqual(['02', '01'])
    expect(lines[1]).toMatchObject({ setting: null, problem: { code: 'barInsideWheel' } })
  })

  it('has an iron once, as one change with one undo, and lets it off', async () => {
    const [a, b] = [await add(), await add()]
    await bench.done('queueEntry.add', { toolIds: [a, b, a], onDay: TODAY })
    expect((await bench.done('queueEntry.add', { toolIds: [a], onDay: TODAY })).value).toEqual([])
    expect(await codes()).toEqual(['01', '02'])
    await bench.done('change.undo', {})
    expect(await codes()).toEqual([])
    await bench.done('queueEntry.add', { toolIds: [b], onDay: TODAY })
    const [line] = (await list()).lines
    await bench.done('queueEntry.remove', { id: line?.entry.id ?? '', version: line?.entry.version ?? 0 })
    expect(await codes()).toEqual([])
    await bench.done('change.undo', {})
    expect(await codes()).toEqual(['02'])
  })

  it('brings over what was left before, each iron once and taken back as one', async () => {
    const [a, b, c] = [await add(), await add(), await add()]
    await bench.done('queueEntry.add', { toolIds: [a, b, c], onDay: '2026-01-03' })
    await bench.done('queueEntry.add', { toolIds: [a], onDay: '2026-01-04' })
    expect((await list('2026-01-03')).lines.map(({ tool }) => tool.code)).toEqual(['02', '03'])
    expect((await list()).leftOver).toBe(3)
    await bench.done('queueEntry.carry', { onDay: TODAY })
    expect([await codes(), (await list()).leftOver]).toEqual([['01', '02', '03'], 0])
    await bench.done('change.undo', {})
    expect([await codes(), await codes('2026-01-04'), await codes('2026-01-03')]).toEqual([[], ['01'], ['02', '03']])
  })

  it('is ticked by hand, and by itself when the iron is measured as ground that day', async () => {
    const [a, b] = [await add(), await add()]
    await bench.done('queueEntry.add', { toolIds: [a, b], onDay: TODAY })
    const done = async () => (await list()).lines.map(({ entry }) => entry.doneAt !== null)
    const [first] = (await list()).lines
    await bench.done('queueEntry.tick', { id: first?.entry.id ?? '', version: 1, done: 'yes' })
    expect(await done()).toEqual([true, false])
    const reading = { reliefLeftMm: 0.1, reliefRightMm: 0.1 }
    await bench.done('benchLog.add', { toolId: b, stage: 'asFound', ...reading })
    expect(await done()).toEqual([true, false])
    await bench.done('benchLog.add', { toolId: b, stage: 'asGround', ...reading })
    expect(await done()).toEqual([true, true])
    await bench.done('change.undo', {})
    expect(await done()).toEqual([true, false])
    expect(await bench.done('benchLog.list', { toolId: b })).toHaveLength(1)
  })

  it('leaves out a tool that was deleted, and has it again with it', async () => {
    const toolId = await add()
    await bench.done('queueEntry.add', { toolIds: [toolId], onDay: '2026-01-04' })
    await bench.done('tool.remove', { id: toolId, version: 1 })
    expect([await codes('2026-01-04'), (await list()).leftOver]).toEqual([[], 0])
    await bench.done('change.undo', {})
    expect([await codes('2026-01-04'), (await list()).leftOver]).toEqual([['01'], 1])
  })
})

describe('a day on paper', () => {
  it('is one sheet in the queue’s order, and a card each but for what cannot be ground', async () => {
    const [a, b] = [await add(), await add({ projectionMm: 30, bevelAngleDeg: 10 })]
    await bench.done('queueEntry.add', { toolIds: [a, b], onDay: TODAY })
    const sheet = await bench.done('queueEntry.sheet', { onDay: TODAY })
    expect(sheet.fileName).toBe(`day-${TODAY}.pdf`)
    expect(Buffer.from(blobs.get(sheet.blobId)?.bytes.subarray(0, 5) ?? []).toString()).toBe('%PDF-')
    expect(given[0]?.[0]).toMatchObject({ lines: [{ tool: { code: '01' } }, { tool: { code: '02' } }] })
    const cards = await bench.done('queueEntry.cards', { onDay: TODAY })
    expect(cards).toMatchObject({ fileName: `job-cards-${TODAY}.pdf`, without: ['02'] })
  })

  it('is refused where the day is empty', async () => {
    expect(codesOf(await bench.call('queueEntry.sheet', { onDay: TODAY }))).toEqual(['dayEmpty'])
    expect(codesOf(await bench.call('queueEntry.cards', { onDay: TODAY }))).toEqual(['dayEmpty'])
  })
})
