import type { Selectable } from 'kysely'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { Change, Noun } from '../contract/entities.ts'
import { changeOfRow, commitStep } from './change.ts'
import type { Desk } from './desk.ts'
import { type NounStore, type Stored, versionOf } from './recordStore.ts'
import type { ChangeRow, Database } from './schema.ts'

type Line = Selectable<ChangeRow>

/** Each noun's store, its record type forgotten: the log holds records of all nouns as JSON. */
export type Stores = { readonly [N in Noun]: NounStore<Stored> }

const conflict = failed(problem('conflict'))

const newestStanding = (db: Database, schemaVersion: number): Promise<Line | undefined> =>
  db
    .selectFrom('change')
    .selectAll()
    .where('undoneBy', 'is', null)
    .where('unasked', '=', 0)
    .where('action', '!=', 'restored')
    .where('schemaVersion', '=', schemaVersion)
    .orderBy('id', 'desc')
    .executeTakeFirst()

const lineOf = (db: Database, id: number): Promise<Line | undefined> =>
  db.selectFrom('change').selectAll().where('id', '=', id).executeTakeFirst()

const linesAfter = (db: Database, line: Line): Promise<Line[]> =>
  db
    .selectFrom('change')
    .selectAll()
    .where('noun', '=', line.noun)
    .where('entityId', '=', line.entityId)
    .where('id', '>', line.id)
    .orderBy('id')
    .execute()

/**
 * Whether a line's `after` is what stands now: every later line of the record is either taken back or took one back.
 * An undo raises the version, since a version once seen must never come to mean something else; so it is by the log that
 * a line still matches, and the version of its last line must be the record's.
 */
const stillMatches = (line: Line, later: readonly Line[], version: number | null): boolean => {
  const last = later.at(-1) ?? line
  const settled =
    line.action === 'restored' ? later.length === 0 : later.every((l) => l.undoneBy !== null || l.action === 'restored')
  return line.undoneBy === null && settled && last.version === version
}

const recordOf = (json: string | null): Stored | null => (json === null ? null : (JSON.parse(json) as Stored))

const mark = async (db: Database, line: Line, undoneBy: number): Promise<void> => {
  await db.updateTable('change').set({ undoneBy }).where('id', '=', line.id).execute()
  if (line.undoes !== null)
    await db.updateTable('change').set({ undoneBy: null }).where('id', '=', line.undoes).execute()
}

const takeBack = async (db: Database, desk: Desk, stores: Stores, line: Line): Promise<Result<Change>> => {
  const seen = await versionOf(db, line.noun, line.entityId)
  if (!stillMatches(line, await linesAfter(db, line), seen)) return conflict
  const made = await commitStep(db, desk, stores[line.noun], {
    id: line.entityId,
    seen,
    before: recordOf(line.after),
    after: recordOf(line.before),
    action: 'restored',
    undoes: line.id,
  })
  if (!made.ok) return made
  await mark(db, line, made.value.changeId)
  return ok(changeOfRow((await lineOf(db, made.value.changeId)) as Line))
}

/**
 * Takes back one change, or without an id the newest that still stands; taking back a `restored` line does the change again.
 *
 * @returns the line that tells of it; or the problems `nothingToUndo`, `conflict` where the record has moved on, or
 *   `historyOnly` for what was written before the data file changed its form
 */
export const undoChange = async (
  db: Database,
  desk: Desk,
  stores: Stores,
  id: number | undefined,
): Promise<Result<Change>> => {
  const schemaVersion = desk.access.schemaVersion()
  const line = id === undefined ? await newestStanding(db, schemaVersion) : await lineOf(db, id)
  if (line === undefined) return failed(problem('nothingToUndo'))
  if (line.schemaVersion !== schemaVersion) return failed(problem('historyOnly', 'id'))
  return takeBack(db, desk, stores, line)
}

/** Which lines of the log are asked for. */
interface Asked {
  readonly most: number
  readonly entityId?: string | undefined
  /** `removed`: what took something away and was not taken back. */
  readonly only: 'all' | 'removed'
}

/** @returns the newest lines, newest first, without what the program did by itself */
export const listChanges = async (db: Database, { most, entityId, only }: Asked): Promise<Change[]> => {
  let query = db.selectFrom('change').selectAll().where('unasked', '=', 0)
  if (entityId !== undefined) query = query.where('entityId', '=', entityId)
  if (only === 'removed') query = query.where('action', '=', 'removed').where('undoneBy', 'is', null)
  const rows = await query.orderBy('id', 'desc').limit(most).execute()
  return rows.map(changeOfRow)
}
