import type { Selectable } from 'kysely'
import { ok, type Result } from '../../geometry/result.ts'
import type { Change } from '../contract/entities.ts'
import type { Desk } from './desk.ts'
import { type NounStore, type Stored, writeRecord } from './recordStore.ts'
import type { ChangeRow, Database } from './schema.ts'

/** A record from one state to another; null: not there. `seen` is its version before, null where there was no row. */
interface Step<T extends Stored> {
  readonly id: string
  readonly seen: number | null
  readonly before: T | null
  readonly after: T | null
  readonly action: Change['action']
  /** What the program did by itself; it is logged, but the undo list leaves it out. */
  readonly unasked?: boolean
  /** The change that this one takes back. */
  readonly undoes?: number
}

export interface Made<T> {
  readonly value: T
  readonly changeId: number
}

/** @returns what was made, without its change's own id: for a part of a larger change */
export const onlyValue = <T>(made: Result<Made<T>>): Result<T> => (made.ok ? ok(made.value.value) : made)

const jsonOf = (record: unknown): string | null => (record === null ? null : JSON.stringify(record))

const rowOf = <T extends Stored>(desk: Desk, store: NounStore<T>, step: Step<T>, version: number, after: T | null) => {
  const named = step.after ?? step.before
  return {
    at: desk.now().toISOString(),
    who: desk.who,
    noun: store.noun,
    entityId: step.id,
    action: step.action,
    label: named === null ? '' : store.labelOf(named),
    version,
    before: jsonOf(step.before),
    after: jsonOf(after),
    undoes: step.undoes ?? null,
    undoneBy: null,
    unasked: step.unasked ? 1 : 0,
    schemaVersion: desk.access.schemaVersion(),
    groupId: null,
  } as const
}

/**
 * The only way a record is written: the record and its line in the change log, in the caller's transaction. The log is
 * also the undo, so nothing can be done that cannot be taken back.
 *
 * @returns the record as it now stands, or the problem `conflict`
 */
export const commitStep = async <T extends Stored, A extends T | null>(
  transaction: Database,
  desk: Desk,
  store: NounStore<T>,
  step: Step<T> & { readonly after: A },
): Promise<Result<Made<A>>> => {
  const at = desk.now().toISOString()
  const written = await writeRecord(transaction, store, step.id, step.seen, step.after, at, step.before)
  if (!written.ok) return written
  const value = (step.after === null ? null : { ...step.after, version: written.value }) as A
  const { id } = await transaction
    .insertInto('change')
    .values(rowOf(desk, store, step, written.value, value))
    .returning('id')
    .executeTakeFirstOrThrow()
  return ok({ value, changeId: id })
}

const newestId = async (db: Database): Promise<number> =>
  (await db.selectFrom('change').select('id').orderBy('id', 'desc').limit(1).executeTakeFirst())?.id ?? 0

/**
 * Everything that `work` changes becomes one entry of the log, taken back as one. Inside a transaction of the only
 * writer, so the lines it wrote are those after the newest there was.
 *
 * @returns what the work answers, with the id of the group; no change at all has the id 0
 */
export const asOne = async <T>(transaction: Database, work: () => Promise<Result<T>>): Promise<Result<Made<T>>> => {
  const before = await newestId(transaction)
  const done = await work()
  if (!done.ok) return done
  const lines = transaction.selectFrom('change').where('id', '>', before)
  const { first, count } = await lines
    .select((line) => [line.fn.min('id').as('first'), line.fn.countAll<number>().as('count')])
    .executeTakeFirstOrThrow()
  if (count > 1) await transaction.updateTable('change').set({ groupId: first }).where('id', '>', before).execute()
  return ok({ value: done.value, changeId: first ?? 0 })
}

type Cells = Readonly<Record<string, unknown>>

const cellOf = (value: unknown): string | number | null =>
  typeof value === 'string' || typeof value === 'number' ? value : null

/** What a record carries that says nothing of its own. */
const bookkeeping = ['id', 'version', 'code']

/** @returns a record as the log keeps it; null where its text is damaged, so that the other lines are still told */
export const cellsOf = (json: string): Cells | null => {
  try {
    return JSON.parse(json) as Cells
  } catch {
    return null
  }
}

/** Plain fields that differ; what is a document of its own, such as a job, is not taken apart here. */
const fieldsOf = ({ noun, before, after }: Selectable<ChangeRow>): Change['fields'] => {
  if (noun === 'job' || before === null || after === null) return []
  const [was, is] = [cellsOf(before), cellsOf(after)]
  if (was === null || is === null) return []
  return [...new Set([...Object.keys(was), ...Object.keys(is)])]
    .filter((key) => !bookkeeping.includes(key) && cellOf(was[key]) !== cellOf(is[key]))
    .map((key) => ({ key, before: cellOf(was[key]), after: cellOf(is[key]) }))
}

/** @param together how many lines were made as one with it; 1: it alone. @returns a line of the log as the undo list shows it */
export const changeOfRow = (row: Selectable<ChangeRow>, together: number): Change => ({
  id: row.id,
  at: row.at,
  who: row.who,
  noun: row.noun,
  entityId: row.entityId,
  action: row.action,
  together,
  label: row.label,
  undone: row.undoneBy !== null,
  fields: fieldsOf(row),
})
