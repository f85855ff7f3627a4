import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Bench, codesOf, openOwnBench, temporaryFolder, tickingClock, toolDraft } from './support.ts'

let folder: ReturnType<typeof temporaryFolder>
let bench: Bench
let places: { readonly room: string; readonly drawer: string; readonly shelf: string }
let ids: readonly string[]
const now = tickingClock()
beforeEach(async () => {
  folder = temporaryFolder()
  bench = await openOwnBench(folder.folder, {}, () => crypto.randomUUID(), now)
  const place = async (name: string, parentId: string | null = null) =>
    (await bench.done('place.add', { name, parentId })).value.id
  const room = await place('Room')
  places = { room, drawer: await place('Drawer', room), shelf: await place('Shelf') }
  const tool = async (placeId: string | null) => (await bench.done('tool.add', { ...toolDraft, placeId })).value.id
  ids = [await tool(places.drawer), await tool(places.shelf), await tool(null)]
})
afterEach(async () => {
  await bench.workshop.close()
  folder.remove()
})

const begin = async (placeId: string | null = null) => (await bench.done('stocktake.begin', { placeId })).value.id
const see = (stocktakeId: string, toolId = '', placeId: string | null = null) =>
  bench.done('stocktake.see', { stocktakeId, toolId, placeId })
const last = async () => (await bench.done('stocktake.last', {})) ?? expect.fail('there is no stocktake')
const missing = async () => (await last()).missing.map(({ code }) => code)

describe('a stocktake', () => {
  it('lists what has not been seen yet, and goes on after the program was closed', async () => {
    expect(await bench.done('stocktake.last', {})).toBeNull()
    const id = await begin()
    expect(await missing()).toEqual(['01', '02', '03'])
    await see(id, ids[0])
    await bench.workshop.close()
    bench = await openOwnBench(folder.folder, {}, () => crypto.randomUUID(), now)
    expect(await missing()).toEqual(['02', '03'])
    expect(await last()).toMatchObject({ expected: 3, seenTotal: 1, within: '', stocktake: { endedAt: null } })
    await see(id, ids[1])
    await bench.done('change.undo', {})
    expect(await missing()).toEqual(['02', '03'])
  })

  it('takes two scans of one tool for one sighting, where it was seen last', async () => {
    const id = await begin()
    await see(id, ids[0], places.drawer)
    expect((await see(id, ids[0], places.room)).changeId).toBe(0)
    expect((await last()).seen.map(({ foundIn }) => foundIn)).toEqual([''])
    await see(id, ids[0], places.shelf)
    expect((await last()).seen.map(({ foundIn, sighting }) => [foundIn, sighting.version])).toEqual([['Shelf', 2]])
    expect((await last()).seenTotal).toBe(1)
  })

  it('says where a tool was found that belongs elsewhere, until it is moved there', async () => {
    const id = await begin()
    await see(id, ids[1], places.drawer)
    await see(id, ids[2], places.shelf)
    const found = async () => (await last()).seen.map(({ tool, foundIn }) => [tool.code, foundIn])
    expect(await found()).toEqual([
      ['03', 'Shelf'],
      ['02', 'Room / Drawer'],
    ])
    await bench.done('tool.errand', { toolIds: [ids[1] ?? ''], errand: { does: 'place', placeId: places.drawer } })
    expect(await found()).toContainEqual(['02', ''])
  })

  it('of one place expects only what belongs in it, with all it holds', async () => {
    await begin(places.room)
    expect(await last()).toMatchObject({ within: 'Room', expected: 1, missing: [{ code: '01' }] })
  })

  it('does not miss what somebody has, nor what was honed since it began', async () => {
    await bench.done('loan.lend', { toolIds: [ids[0] ?? ''], person: 'Wren Oddly' })
    await begin()
    await bench.done('happening.add', { toolId: ids[1] ?? '', kind: 'honed', at: now().toISOString() })
    expect(await last()).toMatchObject({ expected: 2, lent: 1, missing: [{ code: '03' }], missingTotal: 1 })
  })

  it('ends once, with what is missing, and takes no more; the end can be taken back', async () => {
    const id = await begin()
    await see(id, ids[0])
    expect(codesOf(await bench.call('stocktake.begin', { placeId: null }))).toEqual(['stocktakeOpen'])
    await bench.done('stocktake.end', { id, version: 1 })
    expect((await last()).stocktake.endedAt).not.toBeNull()
    expect(await missing()).toEqual(['02', '03'])
    const after = { stocktakeId: id, toolId: ids[1] ?? '', placeId: null }
    expect(codesOf(await bench.call('stocktake.see', after))).toEqual(['stocktakeEnded'])
    expect(codesOf(await bench.call('stocktake.end', { id, version: 2 }))).toEqual(['stocktakeEnded'])
    await bench.done('change.undo', {})
    await see(id, ids[1])
    expect(await missing()).toEqual(['03'])
  })

  it('refuses a place, a tool or a stocktake that does not stand', async () => {
    const nothing = '00000000-0000-4000-8000-00000000ffff'
    expect(codesOf(await bench.call('stocktake.begin', { placeId: nothing }))).toEqual(['noLongerThere'])
    const id = await begin()
    for (const change of [{ toolId: nothing }, { stocktakeId: nothing }, { placeId: nothing }]) {
      const given = { stocktakeId: id, toolId: ids[0] ?? '', placeId: null, ...change }
      expect(codesOf(await bench.call('stocktake.see', given))).toEqual(['noLongerThere'])
    }
  })
})
