import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { CallInput } from '../../main/contract/calls.ts'
import { type Bench, codesOf, openOwnBench, stationDraft, temporaryFolder, toolDraft, toolsOf } from './support.ts'

let folder: ReturnType<typeof temporaryFolder>
let bench: Bench
let ids: readonly string[]
beforeEach(async () => {
  folder = temporaryFolder()
  bench = await openOwnBench(folder.folder)
  ids = [(await bench.done('tool.add', toolDraft)).value.id, (await bench.done('tool.add', toolDraft)).value.id]
})
afterEach(async () => {
  await bench.workshop.close()
  folder.remove()
})

const errand = (which: CallInput<'tool.errand'>['errand'], toolIds = ids, who = '') =>
  bench.call('tool.errand', { toolIds: [...toolIds], errand: which, who })
const changeOf = async (doing: ReturnType<typeof errand>) => {
  const done = await doing
  return done.ok ? done.value.changeId : expect.fail(codesOf(done).join())
}
const lines = (key: 'honings' | 'harmed' | 'place' | 'holder') => toolsOf(bench).then((all) => all.map((t) => t[key]))

describe('an errand, filled in once', () => {
  it('hones, nicks and puts in a place, each scan with its own undo', async () => {
    const first = await changeOf(errand({ does: 'honed' }, ids.slice(0, 1)))
    await changeOf(errand({ does: 'honed' }, ids.slice(1)))
    expect(await lines('honings')).toEqual([1, 1])
    await bench.done('change.undo', { id: first })
    expect(await lines('honings')).toEqual([0, 1])
    await changeOf(errand({ does: 'nicked' }))
    expect(await lines('harmed')).toEqual(['yes', 'yes'])
    const { value: drawer } = await bench.done('place.add', { name: 'Drawer' })
    await changeOf(errand({ does: 'place', placeId: drawer.id }))
    expect(await lines('place')).toEqual(['Drawer', 'Drawer'])
    expect(await changeOf(errand({ does: 'place', placeId: drawer.id }))).toBe(0)
    await bench.done('change.undo', {})
    expect(await lines('place')).toEqual(['', ''])
  })

  it('lends, takes back, and queues; what cannot be done leaves nothing half done', async () => {
    await changeOf(errand({ does: 'lend', person: 'Wren Oddly', dueBack: '2030-01-31' }, ids.slice(0, 1)))
    expect(codesOf(await errand({ does: 'lend', person: 'Nib', dueBack: null }))).toEqual(['alreadyLent'])
    expect(await lines('holder')).toEqual(['Wren Oddly', ''])
    expect((await bench.done('person.list', {})).map(({ name }) => name)).toEqual(['Wren Oddly'])
    await changeOf(errand({ does: 'back' }, ids.slice(0, 1)))
    expect(await lines('holder')).toEqual(['', ''])
    expect(codesOf(await errand({ does: 'back' }))).toEqual(['notLent'])
    await changeOf(errand({ does: 'queue', onDay: '2030-01-01' }))
    expect((await bench.done('queueEntry.list', { onDay: '2030-01-01' })).lines).toHaveLength(2)
  })

  it('leaves somebody new to the other tools when the first scan is taken back', async () => {
    const lent = { does: 'lend', person: 'Wren Oddly', dueBack: null } as const
    const first = await changeOf(errand(lent, ids.slice(0, 1)))
    await changeOf(errand(lent, ids.slice(1)))
    await bench.done('change.undo', { id: first })
    expect(await lines('holder')).toEqual(['', 'Wren Oddly'])
    expect((await bench.done('person.list', {})).map(({ name }) => name)).toEqual(['Wren Oddly'])
  })

  it('is refused where the place does not stand', async () => {
    const nowhere = '00000000-0000-4000-8000-00000000ffff'
    expect(codesOf(await errand({ does: 'place', placeId: nowhere }))).toEqual(['noLongerThere'])
  })
})

it('who has had a tool is listed, newest first, with the names', async () => {
  await changeOf(errand({ does: 'lend', person: 'Wren Oddly', dueBack: null }))
  await changeOf(errand({ does: 'back' }))
  await changeOf(errand({ does: 'lend', person: 'Nib', dueBack: null }, ids.slice(0, 1)))
  const of = async (toolId = '') =>
    (await bench.done('loan.list', { toolId })).map(({ person, returnedAt }) => [person, returnedAt === null])
  expect(await of(ids[0])).toEqual([
    ['Nib', true],
    ['Wren Oddly', false],
  ])
  expect(await of(ids[1])).toEqual([['Wren Oddly', false]])
})

describe('who noted it', () => {
  const honedBy = async (who = '') => {
    const toolId = ids[0] ?? ''
    const { value } = await bench.done('happening.add', { toolId, kind: 'honed', at: '2026-02-01T08:00:00.000Z', who })
    return value.who
  }

  it('is whoever was at the bench last, where that is one of the workshop’s people', async () => {
    expect(await honedBy()).toBe('')
    expect(await honedBy('wren oddly')).toBe('wren oddly')
    expect(await honedBy()).toBe('')
    await bench.done('person.add', { name: 'Wren Oddly' })
    expect(await honedBy()).toBe('Wren Oddly')
    await bench.done('person.add', { name: 'Nib' })
    const station = (await bench.done('station.add', stationDraft)).value
    const at = '2026-02-02T08:00:00.000Z'
    await bench.done('dressing.add', { stationId: station.id, kind: 'dressed', at, diameterMm: 249, who: 'Nib' })
    expect(await honedBy()).toBe('Nib')
    await changeOf(errand({ does: 'dropped' }, ids.slice(1)))
    expect((await bench.done('happening.list', { toolId: ids[1] ?? '' }))[0]?.who).toBe('Nib')
    await changeOf(errand({ does: 'nicked' }, ids.slice(1), 'Somebody else'))
    expect((await bench.done('happening.list', { toolId: ids[1] ?? '' }))[0]?.who).toBe('Somebody else')
    const later = { toolId: ids[0] ?? '', kind: 'honed' as const, at: '2026-03-01T08:00:00.000Z', who: 'Somebody else' }
    await bench.done('happening.add', later)
    expect(await honedBy()).toBe('Nib')
  })
})
