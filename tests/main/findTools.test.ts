import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ok } from '../../geometry/result.ts'
import type { CallInput } from '../../main/contract/calls.ts'
import { MOST_COUNTED } from '../../main/contract/finding.ts'
import { addRecord } from '../../main/rack/recordServices.ts'
import { loanStore } from '../../main/rack/stores.ts'
import { toolStore } from '../../main/rack/tool.ts'
import { type Bench, openOwnBench, temporaryFolder, toolDraft } from './support.ts'

let folder: ReturnType<typeof temporaryFolder>
let bench: Bench
/** Today, as the bench's clock has it. */
const NOW = new Date('2026-05-20T09:00:00.000Z')
const ids: Record<string, string> = {}

const add = async (code: string, change: object) => {
  const { value } = await bench.done('tool.add', { ...toolDraft, ...change })
  expect(value.code).toBe(code)
  ids[code] = value.id
}
const idOf = (code: string): string => ids[code] ?? ''

beforeAll(async () => {
  folder = temporaryFolder()
  bench = await openOwnBench(folder.folder, {}, undefined, () => NOW)
  const place = async (name: string, parentId: string | null = null) => {
    ids[name] = (await bench.done('place.add', { name, parentId })).value.id
    return idOf(name)
  }
  const loft = await place('loft')
  const drawer = await place('drawer', await place('chest', loft))
  ids.fine = (await bench.done('purpose.add', { name: 'fine' })).value.id
  ids.bought = (await bench.done('ownField.add', { name: 'bought', kind: 'figure' })).value.id
  ids.wren = (await bench.done('person.add', { name: 'Wren Oddly' })).value.id
  await add('01', { widthMm: 60, placeId: drawer, dueDays: 30, own: { [idOf('bought')]: 1998 } })
  await add('02', { name: 'block iron', kind: 'block', widthMm: 40, bevelSide: 'up', reliefMm: 0, dueHonings: 2 })
  await add('03', { widthMm: 50, placeId: loft, condition: 'damaged' })
  await add('04', { widthMm: 55, curves: [{ purposeId: idOf('fine'), reliefMm: 0.1, shavingDepthMm: 0.03 }] })
  await add('05', { widthMm: 44, condition: 'retired', dueHonings: 1 })
  const ground = (code: string, at: string) =>
    bench.done('benchLog.add', {
      toolId: idOf(code),
      stage: 'asGround',
      reliefLeftMm: 0.1,
      reliefRightMm: 0.1,
      note: at,
    })
  await ground('01', 'wolf note')
  const honed = (code: string) =>
    bench.done('happening.add', { toolId: idOf(code), kind: 'honed', at: '2026-05-19T08:00:00.000Z' })
  for (const code of ['02', '02', '05']) await honed(code)
  const { desk } = bench.workshop
  const lend = (code: string, dueBack: string) =>
    desk.access.write((db) =>
      addRecord(db, desk, loanStore, {
        toolId: idOf(code),
        personId: idOf('wren'),
        lentAt: '2026-05-01T08:00:00.000Z',
        dueBack,
        returnedAt: null,
        note: '',
      }),
    )
  await lend('03', '2026-05-19')
  await lend('04', '2026-05-20')
})
afterAll(async () => {
  await bench.workshop.close()
  folder.remove()
})

const codes = async (asked: CallInput<'tool.find'>) =>
  (await bench.done('tool.find', asked)).tools.map(({ code }) => code)

describe('tools are found', () => {
  it.each<[string, () => CallInput<'tool.find'>, string[]]>([
    ['by kind', () => ({ filter: { kinds: ['block', 'scrub'] } }), ['02']],
    ['by a place with all in it', () => ({ filter: { placeId: idOf('loft') } }), ['01', '03']],
    ['by a place within another', () => ({ filter: { placeId: idOf('chest') } }), ['01']],
    ['by who has them', () => ({ filter: { holderId: idOf('wren') } }), ['03', '04']],
    ['lent', () => ({ filter: { lent: 'lent' } }), ['03', '04']],
    ['here', () => ({ filter: { lent: 'here' } }), ['01', '02', '05']],
    ['overdue from the day after', () => ({ filter: { lent: 'overdue' } }), ['03']],
    ['due, but never one that was put by', () => ({ filter: { due: 'any' } }), ['02', '03']],
    ['due by use', () => ({ filter: { due: 'use' } }), ['02']],
    ['due by state', () => ({ filter: { due: 'state' } }), ['03']],
    ['sharp', () => ({ filter: { sharp: 'yes' } }), ['01']],
    ['by purpose', () => ({ filter: { purposeId: idOf('fine') } }), ['04']],
    ['by condition', () => ({ filter: { conditions: ['retired', 'damaged'] } }), ['03', '05']],
    ['straight', () => ({ filter: { edge: 'straight' } }), ['02']],
    ['bevel up', () => ({ filter: { bevelSide: 'up' } }), ['02']],
    ['by width', () => ({ filter: { widthFromMm: 44, widthToMm: 55 } }), ['03', '04', '05']],
    ['not seen since a day', () => ({ filter: { notSeenSince: '2026-05-19' } }), ['03', '04']],
    ['by a field of one’s own', () => ({ filter: { own: { fieldId: idOf('bought'), value: 1998 } } }), ['01']],
    ['by several conditions at once', () => ({ filter: { lent: 'lent', placeId: idOf('loft') } }), ['03']],
    ['by words and conditions', () => ({ search: 'wren', filter: { lent: 'overdue' } }), ['03']],
    ['by a note of the log', () => ({ search: 'wolf' }), ['01']],
    ['sorted by width', () => ({ sort: 'widthMm' }), ['02', '05', '03', '04', '01']],
    ['sorted the other way', () => ({ sort: 'widthMm', descending: true }), ['01', '04', '03', '05', '02']],
    ['sorted by place, those without one last', () => ({ sort: 'place' }), ['03', '01', '02', '04', '05']],
    ['sorted by what is due, those that are not last', () => ({ sort: 'due' }), ['03', '02', '01', '04', '05']],
    ['sorted by name whatever the capitals', () => ({ sort: 'name', limit: 2 }), ['02', '01']],
    ['a page at a time', () => ({ offset: 3, limit: 1 }), ['04']],
  ])('%s', async (_, asked, expected) => {
    expect(await codes(asked())).toEqual(expected)
  })

  it('due by time once the days have gone by', async () => {
    const later = new Date(NOW.getTime() + 30 * 24 * 3600 * 1000)
    const { desk } = bench.workshop
    const { findTools } = await import('../../main/rack/finding/findTools.ts')
    const { askedSchema } = await import('../../main/contract/finding.ts')
    const dueAt = async (at: Date) => {
      const asked = askedSchema.parse({ filter: { due: 'time' } })
      const { tools } = await desk.access.read((db) => findTools(db, asked, at.toISOString()))
      return tools.map(({ code, due }) => [code, due])
    }
    expect(await dueAt(new Date(later.getTime() - 1000))).toEqual([])
    expect(await dueAt(later)).toEqual([['01', 'time']])
  })

  it('one by one, by id and by code', async () => {
    expect(await bench.done('tool.one', { code: '03' })).toMatchObject({ place: 'loft', holder: 'Wren Oddly' })
    expect(await bench.done('tool.one', { id: idOf('04') })).toMatchObject({ code: '04' })
    expect(await bench.done('tool.one', { code: '77' })).toBeNull()
  })

  it('with how the rack stands', async () => {
    expect(await bench.done('tool.standing', {})).toEqual({ tools: 5, curved: 4, lent: 2, overdue: 1, due: 2 })
  })
})

it('words that find very many are counted only so far, and it is told', async () => {
  const { desk } = bench.workshop
  await desk.access.write(async (db) => {
    for (let k = 0; k <= MOST_COUNTED; k += 1) await addRecord(db, desk, toolStore, { ...toolDraft, note: 'zebra' })
    return ok(null)
  })
  const found = await bench.done('tool.find', { search: 'z', limit: 3 })
  expect([found.total, found.more, found.tools.map(({ code }) => code)]).toEqual([
    MOST_COUNTED,
    true,
    ['06', '07', '08'],
  ])
})
