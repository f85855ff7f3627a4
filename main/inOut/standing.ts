import type { Kysely } from 'kysely'
import type { InOutNoun } from '../contract/inOut.ts'
import type { Row } from '../database/recordStore.ts'
import type { Database, RecordRow } from '../database/schema.ts'
import { type AnyRecord, draftOf, type NounForm, referencesOf } from './nouns.ts'

/** All nouns' tables have these columns; those with tools in them, also the last. */
interface RecordColumns extends RecordRow {
  readonly code: string
  readonly toolId: string
}

const tablesOf = (db: Database) => db as unknown as Kysely<Record<InOutNoun, RecordColumns>>

/** A row of the rack, standing or in the scrap box. */
export interface Place {
  readonly id: string
  readonly code: string
  readonly version: number
  readonly stands: boolean
}

/** @returns where each record of a noun lies, also those in the scrap box: their codes are taken for ever */
export const placesOf = async (db: Database, noun: InOutNoun): Promise<readonly Place[]> => {
  const rows = await tablesOf(db).selectFrom(noun).select(['id', 'code', 'version', 'deletedAt']).execute()
  return rows.map(({ deletedAt, ...row }) => ({ ...row, stands: deletedAt === null }))
}

/** Fewer than the driver takes parameters, enough that the statement costs nothing beside the rows. */
const IDS_AT_ONCE = 1000

/** @returns the standing records of these ids */
export const recordsOfIds = async (
  db: Database,
  { noun, store }: NounForm,
  ids: readonly string[],
): Promise<ReadonlyMap<string, AnyRecord>> => {
  const found = new Map<string, AnyRecord>()
  for (let from = 0; from < ids.length; from += IDS_AT_ONCE) {
    const some = ids.slice(from, from + IDS_AT_ONCE)
    const rows = await tablesOf(db)
      .selectFrom(noun)
      .selectAll()
      .where('id', 'in', some)
      .where('deletedAt', 'is', null)
      .execute()
    for (const row of rows) found.set(row.id, store.fromRow(row as unknown as Row))
  }
  return found
}

/** @returns all standing records of a noun in the order of their codes. @param toolId only those of one tool */
export const standingRecords = async (
  db: Database,
  { noun, store }: NounForm,
  toolId: string | null = null,
): Promise<readonly AnyRecord[]> => {
  let query = tablesOf(db).selectFrom(noun).selectAll().where('deletedAt', 'is', null)
  if (toolId !== null) query = query.where(noun === 'tool' ? 'id' : 'toolId', '=', toolId)
  const rows = await query
    .orderBy((row) => row.fn<number>('length', ['code']))
    .orderBy('code')
    .execute()
  return rows.map((row) => store.fromRow(row as unknown as Row))
}

/** Ids of what is taken along, by noun. */
export type Along = ReadonlyMap<InOutNoun, ReadonlySet<string>>

/**
 * A record without what it says of records that stay behind, such as one in the scrap box; null where it cannot be.
 *
 * @param said what stands there instead: null, or undefined where the file is not to speak of it at all
 */
export const without = (form: NounForm, record: AnyRecord, along: Along, said: null | undefined): AnyRecord | null => {
  const lost = referencesOf(form, draftOf(form, record)).filter(({ noun, id }) => !along.get(noun)?.has(id))
  if (lost.length === 0) return record
  const columns = new Map(form.columns.map((column) => [column.key, column]))
  if (lost.some(({ key }) => columns.get(key)?.holds.kind === 'record' && !columns.get(key)?.nullable)) return null
  const emptied = lost.filter(({ key }) => columns.get(key)?.holds.kind === 'record').map(({ key }) => [key, said])
  return { ...record, ...form.trimmed(record, lost), ...Object.fromEntries(emptied) }
}
