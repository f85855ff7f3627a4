import type { Kysely } from 'kysely'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { Noun } from '../contract/entities.ts'
import type { Database, RecordRow } from './schema.ts'

/** What every record carries, whatever its noun. */
export interface Stored {
  readonly id: string
  readonly version: number
}

/** A record that carries a short code, for labels and cards. */
export interface Coded extends Stored {
  readonly code: string
}

type Cell = string | number | null
export type Row = RecordRow & { readonly [column: string]: Cell }

/** How a noun's records lie in their table. A row has the record's own keys, except where the two mappers say otherwise. */
export interface NounStore<T extends Stored> {
  readonly noun: Noun
  /** Name or code, for the message that tells of a change. */
  labelOf(record: T): string
  toRow(record: T): Readonly<Record<string, Cell>>
  fromRow(row: Row): T
}

/** Nouns whose records carry a code. */
export type CodedNoun = Exclude<Noun, 'settings'>

/** Keys that hold the id of another record, with its noun; a null there names none. */
export type Refs = { readonly [key: string]: CodedNoun }

export interface CodedStore<T extends Coded> extends NounStore<T> {
  readonly noun: CodedNoun
  readonly refs?: Refs
}

/** A store of a noun whose records lie in their table as they are. @param labelOf name or code, for the message of a change */
export const plainStore = <T extends Coded>(
  noun: CodedNoun,
  labelOf: (record: T) => string,
  refs: Refs = {},
): CodedStore<T> => ({
  noun,
  labelOf,
  refs,
  toRow: (record) => record as unknown as Readonly<Record<string, Cell>>,
  fromRow: (row) => withoutMark(row) as unknown as T,
})

/** As `plainStore`, with some keys kept as JSON text. */
export const jsonStore = <T extends Coded>(
  noun: CodedNoun,
  labelOf: (record: T) => string,
  keys: readonly (keyof T & string)[],
  refs: Refs = {},
): CodedStore<T> => {
  const each = (from: object, turn: (value: unknown) => unknown) =>
    Object.fromEntries(keys.map((key) => [key, turn((from as Record<string, unknown>)[key])]))
  return {
    noun,
    labelOf,
    refs,
    toRow: (record) => ({ ...record, ...each(record, (value) => JSON.stringify(value)) }) as never,
    fromRow: (row) => ({ ...withoutMark(row), ...each(row, (value) => JSON.parse(String(value))) }) as unknown as T,
  }
}

/** All nouns' tables have the columns of a record, which is all that the functions here rely on. */
type RecordTables = Record<Noun, Row>

const recordsIn = (db: Database): Kysely<RecordTables> => db as unknown as Kysely<RecordTables>

/** @returns the row's columns without the mark of deletion, for stores whose rows are their records */
export const withoutMark = ({ deletedAt: _, ...columns }: Row): Omit<Row, 'deletedAt'> => columns

/** @returns the record of an id, or null where there is none or it was removed */
export const findRecord = async <T extends Stored>(
  db: Database,
  store: NounStore<T>,
  id: string,
): Promise<T | null> => {
  const row = await recordsIn(db)
    .selectFrom(store.noun)
    .selectAll()
    .where('id', '=', id)
    .where('deletedAt', 'is', null)
    .executeTakeFirst()
  return row === undefined ? null : store.fromRow(row as Row)
}

/** @returns the record that carries a code, and whether it was removed; null where none ever did */
export const findByCode = async <T extends Coded>(
  db: Database,
  store: CodedStore<T>,
  code: string,
): Promise<{ readonly record: T; readonly removed: boolean } | null> => {
  const row = await recordsIn(db).selectFrom(store.noun).selectAll().where('code', '=', code).executeTakeFirst()
  return row === undefined ? null : { record: store.fromRow(row as Row), removed: row.deletedAt !== null }
}

/** As `findRecord`, for a caller that cannot go on without. */
export const needRecord = async <T extends Stored>(
  db: Database,
  store: NounStore<T>,
  id: string,
  path = 'id',
): Promise<Result<T>> => {
  const record = await findRecord(db, store, id)
  return record === null ? failed(problem('noLongerThere', path)) : ok(record)
}

/** @returns all records that stand, in the order of their codes */
export const listRecords = async <T extends Coded>(db: Database, store: NounStore<T>): Promise<T[]> => {
  const rows = await recordsIn(db)
    .selectFrom(store.noun)
    .selectAll()
    .where('deletedAt', 'is', null)
    .orderBy((row) => row.fn<number>('length', ['code']))
    .orderBy('code')
    .execute()
  return rows.map((row) => store.fromRow(row as Row))
}

/** @returns the standing records whose column holds this id, newest first by `at` or another column of time */
export const listOf = async <T extends Coded>(
  db: Database,
  store: CodedStore<T>,
  owner: { readonly column: string; readonly id: string; readonly by: string },
): Promise<T[]> => {
  const rows = await recordsIn(db)
    .selectFrom(store.noun)
    .selectAll()
    .where(owner.column, '=', owner.id)
    .where('deletedAt', 'is', null)
    .orderBy(owner.by, 'desc')
    .orderBy('code', 'desc')
    .execute()
  return rows.map((row) => store.fromRow(row as Row))
}

/** @returns the problem `noLongerThere` at the first key that names a record which does not stand */
export const checkRefs = async (db: Database, refs: Refs, record: object): Promise<Result<null>> => {
  for (const [key, noun] of Object.entries(refs)) {
    const id = (record as Readonly<Record<string, unknown>>)[key]
    if (id === null) continue
    const row = await recordsIn(db)
      .selectFrom(noun)
      .select('id')
      .where('id', '=', String(id))
      .where('deletedAt', 'is', null)
      .executeTakeFirst()
    if (!row) return failed(problem('noLongerThere', key))
  }
  return ok(null)
}

/** @returns the version of an id's row, removed or not; null where there never was one */
export const versionOf = async (db: Database, noun: Noun, id: string): Promise<number | null> => {
  const row = await recordsIn(db).selectFrom(noun).select('version').where('id', '=', id).executeTakeFirst()
  return row?.version ?? null
}

const conflict = failed(problem('conflict'))

const setWhereSeen = async (
  db: Database,
  noun: Noun,
  id: string,
  seen: number,
  columns: Partial<Row>,
): Promise<Result<number>> => {
  const done = await recordsIn(db)
    .updateTable(noun)
    .set({ ...columns, version: seen + 1 })
    .where('id', '=', id)
    .where('version', '=', seen)
    .executeTakeFirst()
  return done.numUpdatedRows === 1n ? ok(seen + 1) : conflict
}

const insert = async <T extends Stored>(db: Database, store: NounStore<T>, record: T): Promise<Result<number>> => {
  const row = { ...store.toRow(record), version: 1, deletedAt: null } as unknown as Row
  await recordsIn(db).insertInto(store.noun).values(row).execute()
  return ok(1)
}

const differing = (columns: Partial<Row>, before: Partial<Row>): Partial<Row> =>
  Object.fromEntries(Object.entries(columns).filter(([key, value]) => value !== before[key as keyof Row]))

/**
 * Writes a record, or marks it removed where `record` is null; a removed row that is written again stands again.
 *
 * @param seen the version the writer saw; null: there was no row
 * @param before what stood then; only what differs is written, so that the file's triggers do no more than they must
 * @returns the version now, or the problem `conflict` where the row is at another
 */
export const writeRecord = <T extends Stored>(
  db: Database,
  store: NounStore<T>,
  id: string,
  seen: number | null,
  record: T | null,
  at: string,
  before: T | null,
): Promise<Result<number>> => {
  if (record === null) return setWhereSeen(db, store.noun, id, seen ?? 0, { deletedAt: at })
  if (seen === null) return insert(db, store, record)
  const columns = store.toRow(record) as Partial<Row>
  if (before === null) return setWhereSeen(db, store.noun, id, seen, { ...columns, deletedAt: null })
  return setWhereSeen(db, store.noun, id, seen, differing(columns, store.toRow(before) as Partial<Row>))
}
