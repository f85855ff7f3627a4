import { ok, type Result } from '../../geometry/result.ts'
import type { CallInput } from '../contract/calls.ts'
import type { Noun } from '../contract/entities.ts'
import type { Errand } from '../contract/errand.ts'
import { asOne, type Made } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import { needRecord } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { lastAtTheBench } from '../people/atTheBench.ts'
import { addRecord, editRecord } from '../rack/recordServices.ts'
import { happeningStore } from '../rack/stores.ts'
import { toolStore } from '../rack/tool.ts'
import type { Services } from '../services.ts'
import { enqueue } from './enqueue.ts'
import { giveBackAll, lendAll, personNamed } from './loanServices.ts'
import { toEach } from './toEach.ts'

type Happening = Extract<Errand, { readonly does: 'honed' | 'dropped' | 'nicked' }>['does']

const noteHappening = async (db: Database, desk: Desk, toolId: string, kind: Happening, who: string) => {
  const at = desk.now().toISOString()
  return addRecord(db, desk, happeningStore, { toolId, kind, at, who, note: '' })
}

const put = async (db: Database, desk: Desk, toolId: string, placeId: string): Promise<Result<unknown>> => {
  const tool = await needRecord(db, toolStore, toolId, 'toolIds')
  if (!tool.ok || tool.value.placeId === placeId) return tool
  return editRecord(db, desk, toolStore, tool.value, { placeId })
}

const run = async (
  db: Database,
  desk: Desk,
  { toolIds, errand, who = '' }: CallInput<'tool.errand'>,
): Promise<Result<unknown>> => {
  switch (errand.does) {
    case 'place':
      return toEach(toolIds, (id) => put(db, desk, id, errand.placeId))
    case 'lend':
      return lendAll(db, desk, { toolIds, person: errand.person, dueBack: errand.dueBack ?? null })
    case 'back':
      return giveBackAll(db, desk, toolIds)
    case 'queue':
      return enqueue(db, desk, toolIds, errand.onDay)
    default: {
      const by = who === '' ? await lastAtTheBench(db) : who
      return toEach(toolIds, (id) => noteHappening(db, desk, id, errand.does, by))
    }
  }
}

/** Somebody new is a change of their own, so that taking one scan back leaves them to the others. */
const makeReady = async (db: Database, desk: Desk, errand: Errand): Promise<Result<unknown>> =>
  errand.does === 'lend' ? personNamed(db, desk, errand.person) : ok(null)

/** Records that each errand changes. */
const touched: Readonly<Record<Errand['does'], readonly Noun[]>> = {
  honed: ['happening'],
  dropped: ['happening'],
  nicked: ['happening'],
  place: ['tool'],
  lend: ['person', 'loan'],
  back: ['loan'],
  queue: ['queueEntry'],
}

/** The call that does one thing to a tool, or to many, as one change. Where nothing had to be changed its id is 0. */
export const errandServices = (desk: Desk): Pick<Services, 'tool.errand'> => ({
  'tool.errand': async (given, context) => {
    const made: Result<Made<unknown>> = await desk.access.write(async (db) => {
      const ready = await makeReady(db, desk, given.errand)
      return ready.ok ? asOne(db, () => run(db, desk, given)) : ready
    })
    if (!made.ok) return made
    for (const noun of touched[given.errand.does]) context.changed(noun, [])
    return ok({ value: null, changeId: made.value.changeId })
  },
})
