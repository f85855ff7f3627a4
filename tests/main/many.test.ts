import { afterEach, beforeEach, expect, it } from 'vitest'
import { type Bench, codesOf, openOwnBench, temporaryFolder, toolDraft, toolsOf } from './support.ts'

let folder: ReturnType<typeof temporaryFolder>
let bench: Bench
let ids: string[]
beforeEach(async () => {
  folder = temporaryFolder()
  bench = await openOwnBench(folder.folder)
  ids = []
  for (const [name, steel] of [
    ['jack one', 'old'],
    ['jack two', 'new'],
    ['block', 'old'],
  ] as const)
    ids.push((await bench.done('tool.add', { ...toolDraft, name, steel, note: 'kept dry', dueDays: 30 })).value.id)
})
afterEach(async () => {
  await bench.workshop.close()
  folder.remove()
})
const FOUND = { search: 'jack', filter: {} }
const rack = async () => (await toolsOf(bench)).map(({ name, steel, dueDays, note }) => [name, steel, dueDays, note])

it('only what is set is changed, only where it differs, in one line of history that one undo takes back', async () => {
  const before = await rack()
  const asked = { which: { ids }, set: { steel: 'new', noteAdded: 'oiled' } }
  expect(await bench.done('tools.look', asked)).toEqual({ tools: 3, changed: 3 })
  expect(await bench.done('tools.look', { ...asked, set: { steel: 'new' } })).toEqual({ tools: 3, changed: 2 })
  expect((await bench.done('tools.edit', asked)).value).toBe(3)
  expect(await rack()).toEqual([
    ['jack one', 'new', 30, 'kept dry\noiled'],
    ['jack two', 'new', 30, 'kept dry\noiled'],
    ['block', 'new', 30, 'kept dry\noiled'],
  ])
  expect((await bench.done('change.list', { most: 1 }))[0]).toMatchObject({ together: 3 })
  await bench.done('change.undo', {})
  expect(await rack()).toEqual(before)
})

it('all that is found is changed, and removed, whatever a window has seen of it', async () => {
  await bench.done('tools.edit', { which: FOUND, set: { dueDays: null } })
  expect((await rack()).map(([, , days]) => days)).toEqual([null, null, 30])
  await bench.done('tools.edit', { which: { ...FOUND, except: ids.slice(0, 1) }, set: { dueDays: 7 } })
  expect((await rack()).map(([, , days]) => days)).toEqual([null, 7, 30])
  expect((await bench.done('tools.remove', { which: FOUND })).value).toBe(2)
  expect((await rack()).map(([name]) => name)).toEqual(['block'])
  await bench.done('change.undo', {})
  expect(await rack()).toHaveLength(3)
})

it('an own field is set or taken away beside the others of a tool', async () => {
  const [rust, owner] = ['00000000-0000-4000-8000-00000000aaaa', '00000000-0000-4000-8000-00000000bbbb'] as const
  const own = async () => (await toolsOf(bench)).map((tool) => tool.own)
  await bench.done('tools.edit', { which: { ids: ids.slice(0, 2) }, set: { own: { [rust]: 'none', [owner]: 'hall' } } })
  const asked = { which: { ids }, set: { own: { [rust]: null } } }
  expect(await bench.done('tools.look', asked)).toEqual({ tools: 3, changed: 2 })
  await bench.done('tools.edit', asked)
  expect(await own()).toEqual([{ [owner]: 'hall' }, { [owner]: 'hall' }, {}])
  expect((await bench.raw('tools.edit', { which: { ids }, set: { own: { rust: 'none' } } })).ok).toBe(false)
})

it('how many are found is counted in full where nothing is set yet, but for those left out', async () => {
  expect(await bench.done('tools.look', { which: FOUND, set: {} })).toEqual({ tools: 2, changed: 0 })
  expect(await bench.done('tools.look', { which: { ...FOUND, except: ids.slice(0, 1) }, set: {} })).toEqual({
    tools: 1,
    changed: 0,
  })
})

it('tells how far it is, and stopped half-way leaves nothing', async () => {
  for (let n = 0; n < 400; n += 1) await bench.done('tool.add', { ...toolDraft, name: `jack ${n}`, steel: 'old' })
  const rackNow = () => bench.done('tool.find', { search: 'jack', sort: 'name', limit: 500 } as never)
  const before = await rackNow()
  const [newest] = await bench.done('change.list', { most: 1 })
  for (const [name, input] of [
    ['tools.edit', { which: FOUND, set: { steel: 'new' } }],
    ['tools.remove', { which: FOUND }],
  ] as const) {
    bench.events.length = 0
    const running = bench.call(name, input as never, 'long')
    const stop = setInterval(() => {
      if (bench.events.some((event) => event.type === 'progress' && event.done > 0.4)) bench.cancel('long')
    }, 1)
    expect(codesOf(await running)).toEqual(['cancelled'])
    clearInterval(stop)
    const steps = bench.events.flatMap((event) => (event.type === 'progress' ? [event.done] : []))
    expect(steps.length).toBeGreaterThan(10)
    expect(steps).toEqual([...steps].sort((a, b) => a - b))
    expect(await rackNow()).toEqual(before)
    expect((await bench.done('change.list', { most: 1 }))[0]).toEqual(newest)
  }
})

it('is all or nothing: a tool that is gone, a place that is gone, a note that is full, a figure out of range', async () => {
  const before = await rack()
  const which = { ids }
  const gone = { ids: [...ids, '00000000-0000-4000-8000-00000000dead'] }
  expect(codesOf(await bench.call('tools.edit', { which: gone, set: { steel: 'x' } }))).toEqual(['someGone'])
  const placeId = '00000000-0000-4000-8000-00000000dead'
  expect(codesOf(await bench.call('tools.edit', { which, set: { placeId } }))).toEqual(['noLongerThere'])
  const noteAdded = 'n'.repeat(3995)
  expect(codesOf(await bench.call('tools.edit', { which, set: { noteAdded } }))).toEqual(['noteFull'])
  expect((await bench.raw('tools.edit', { which, set: { reliefMm: -1 } })).ok).toBe(false)
  expect((await bench.raw('tools.edit', { which, set: { name: 'all alike' } })).ok).toBe(false)
  expect(await rack()).toEqual(before)
})
