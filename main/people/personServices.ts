import { rmSync } from 'node:fs'
import { join } from 'node:path'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { backUp } from '../backup/backUp.ts'
import { backupFolder, type Copy } from '../backup/copies.ts'
import type { CallInput } from '../contract/calls.ts'
import { nouns } from '../contract/entities.ts'
import type { Person } from '../contract/people.ts'
import { commitStep, type Made } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import { faultText } from '../database/fault.ts'
import { needRecord } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { named, recordServices } from '../rack/recordServices.ts'
import { personStore } from '../rack/stores.ts'
import type { Services } from '../services.ts'
import type { Workshop } from '../workshop/workshop.ts'
import { copiesWith } from './copiesWith.ts'
import { purgeName, wipeFile } from './purge.ts'
import { tracesOf } from './traces.ts'

/** Nobody goes who still has a tool: it would then be with nobody. */
const mayGo = async (db: Database, { id, name }: Person): Promise<Result<null>> => {
  const { tools } = await db
    .selectFrom('loan')
    .select((loan) => loan.fn.countAll<number>().as('tools'))
    .where('personId', '=', id)
    .where('returnedAt', 'is', null)
    .where('deletedAt', 'is', null)
    .executeTakeFirstOrThrow()
  return tools > 0 ? failed(problem('personHolds', 'id', { name, count: tools })) : ok(null)
}

/** The record's own line of history holds its code alone; it can be read, and never taken back. */
const goneForGood = async (
  db: Database,
  desk: Desk,
  { id, version, inNotes }: CallInput<'person.purge'>,
): Promise<Result<Made<string>>> => {
  const person = await needRecord(db, personStore, id)
  if (!person.ok) return person
  const { name, code } = person.value
  const may = await mayGo(db, person.value)
  if (!may.ok) return may
  await purgeName(db, { name, code }, inNotes)
  const before = { ...person.value, name: code }
  const gone = await commitStep(db, desk, personStore, { id, seen: version, before, after: null, action: 'purged' })
  return gone.ok ? ok({ value: name, changeId: gone.value.changeId }) : gone
}

/** A new copy first, so that there is one; then those that hold the name go. */
const dropCopies = (path: string, copies: readonly Copy[], now: Date): void => {
  if (copies.length === 0) return
  backUp(path, now)
  for (const { name } of copies) rmSync(join(backupFolder(path), name), { force: true })
}

/** The calls about people. */
export const personServices = (
  workshop: Workshop,
): Pick<Services, `person.${'list' | 'add' | 'edit' | 'traces' | 'purge'}`> => {
  const { desk } = workshop
  const { remove: _, ...services } = recordServices(desk, personStore)
  return {
    ...named('person', services),
    'person.traces': async ({ id }) =>
      desk.access.read(async (db) => {
        const person = await needRecord(db, personStore, id)
        if (!person.ok) return person
        const traces = await tracesOf(db, person.value)
        return ok({ ...traces, notes: [...traces.notes], copies: [...copiesWith(workshop.path(), person.value.name)] })
      }),
    'person.purge': async (asked, context) => {
      const gone = await desk.access.write((db) => goneForGood(db, desk, asked))
      if (!gone.ok) return gone
      for (const noun of nouns) context.changed(noun, [])
      return desk.access.read(async (db) => {
        try {
          await wipeFile(db)
          const copies = copiesWith(workshop.path(), gone.value.value)
          if (asked.copies === 'delete') dropCopies(workshop.path(), copies, desk.now())
          return ok({ copies: asked.copies === 'delete' ? [] : [...copies] })
        } catch (error) {
          return failed(problem('purgeUnfinished', '', { detail: faultText(error) }))
        }
      })
    },
  }
}
