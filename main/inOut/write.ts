import { setImmediate } from 'node:timers/promises'
import { CompiledQuery } from 'kysely'
import { ok, type Result } from '../../geometry/result.ts'
import { commitStep } from '../database/change.ts'
import { reserveCodes } from '../database/codes.ts'
import type { Desk } from '../database/desk.ts'
import type { Database } from '../database/schema.ts'
import type { AnyRecord, Draft, NounForm } from './nouns.ts'
import type { NounPlan, Planned } from './plan.ts'

/** Rows of one statement: beyond this many it gets no faster, and the driver's limit of parameters is far. */
const ROWS_AT_ONCE = 100

type Cell = string | number | null

/** Adds many rows to a table by few statements. @param columns of every row, in its order */
const insertRows = async (
  db: Database,
  table: string,
  columns: readonly string[],
  rows: readonly (readonly Cell[])[],
): Promise<void> => {
  const row = `(${columns.map(() => '?').join(', ')})`
  const sql = `INSERT INTO "${table}" (${columns.map((column) => `"${column}"`).join(', ')}) VALUES ${rows.map(() => row).join(', ')}`
  await db.executeQuery(CompiledQuery.raw(sql, rows.flat()))
}

const changeColumns = [
  ...['at', 'who', 'noun', 'entityId', 'action', 'label', 'version'],
  ...['before', 'after', 'undoes', 'undoneBy', 'unasked', 'schemaVersion', 'groupId'],
] as const

const changeRow = (desk: Desk, { noun, store }: NounForm, record: AnyRecord, at: string): readonly Cell[] => [
  ...[at, desk.who, noun, record.id, 'added', store.labelOf(record), record.version],
  ...[null, JSON.stringify(record), null, null, 0, desk.access.schemaVersion(), null],
]

/** As `addRecord` for many at once: their rows and their lines in the change log, each a statement for many. */
const addRecords = async (db: Database, desk: Desk, form: NounForm, records: readonly AnyRecord[]): Promise<void> => {
  const at = desk.now().toISOString()
  const rows = records.map((record) => ({ ...form.store.toRow(record), version: 1, deletedAt: null }))
  const columns = Object.keys(rows[0] as object)
  await insertRows(
    db,
    form.noun,
    columns,
    rows.map((row) => Object.values(row) as Cell[]),
  )
  await insertRows(
    db,
    'change',
    changeColumns,
    records.map((record) => changeRow(desk, form, record, at)),
  )
}

const recordOf = (id: string, code: string, draft: Draft): AnyRecord => ({ ...draft, id, code, version: 1 })

/** What writing tells as it goes. @throws where nobody waits any more */
type Went = (rows: number) => void

const addAll = async (db: Database, desk: Desk, form: NounForm, planned: readonly Planned[], went: Went) => {
  const given = planned.flatMap(({ code }) => (code === null ? [] : [code]))
  const codes = [...(await reserveCodes(db, form.noun, planned.length - given.length, given))].reverse()
  const records = planned.map(({ id, code, draft }) => recordOf(id, code ?? (codes.pop() as string), draft))
  for (let from = 0; from < records.length; from += ROWS_AT_ONCE) {
    const some = records.slice(from, from + ROWS_AT_ONCE)
    await addRecords(db, desk, form, some)
    went(some.length)
    await setImmediate()
  }
}

/** A record that stands is changed; one from the scrap box stands again. */
const renew = async (db: Database, desk: Desk, form: NounForm, planned: Planned): Promise<Result<unknown>> => {
  const { id, place, before, draft } = planned
  const code = place?.code ?? ''
  // What a record carries beside its draft, such as a version, is the store's own.
  const after = { ...(before ?? recordOf(id, code, {})), ...draft }
  const action = before === null ? 'added' : 'edited'
  return commitStep(db, desk, form.store, { id, seen: place?.version ?? null, before, after, action })
}

const renewAll = async (db: Database, desk: Desk, form: NounForm, planned: readonly Planned[], went: Went) => {
  for (const [i, each] of planned.entries()) {
    const made = await renew(db, desk, form, each)
    if (!made.ok) return made
    went(1)
    if (i % ROWS_AT_ONCE === 0) await setImmediate()
  }
  return ok(null)
}

/** Writes what a plan says of one noun, in the caller's transaction. */
export const writePlan = async (
  db: Database,
  desk: Desk,
  { form, planned }: NounPlan,
  went: Went,
): Promise<Result<unknown>> => {
  const of = (...fates: readonly Planned['fate'][]) => planned.filter(({ fate }) => fates.includes(fate))
  await addAll(db, desk, form, of('added'), went)
  return renewAll(db, desk, form, of('changed', 'back'), went)
}

/** @returns how many rows a plan writes */
export const rowsToWrite = ({ planned }: NounPlan): number => planned.filter(({ fate }) => fate !== 'same').length
