import type { Selectable } from 'kysely'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { Change, Noun } from '../contract/entities.ts'
import { asOne, changeOfRow, commitStep } from './change.ts'
import { withToolNames } from './changeLabels.ts'
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
    .where('action', 'not in', ['restored', 'purged'])
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

const takeBack = async (db: Database, desk: Desk, stores: Stores, line: Line): Promise<Result<Line>> => {
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
  return ok((await lineOf(db, made.value.changeId)) as Line)
}

/** The lines made as one with this one, newest first, since each was made on what those before it left. */
const groupOf = async (db: Database, line: Line): Promise<readonly Line[]> =>
  line.groupId === null
    ? [line]
    : db.selectFrom('change').selectAll().where('groupId', '=', line.groupId).orderBy('id', 'desc').execute()

const takeBackAll = async (
  db: Database,
  desk: Desk,
  stores: Stores,
  lines: readonly Line[],
): Promise<Result<readonly Line[]>> => {
  const told: Line[] = []
  for (const line of lines) {
    const back = await takeBack(db, desk, stores, line)
    if (!back.ok) return back
    told.push(back.value)
  }
  return ok(told)
}

/** What an undo did: the change that tells of it, and every record it touched. */
export interface Undone {
  readonly change: Change
  readonly touched: readonly { readonly noun: Noun; readonly entityId: string }[]
}

/**
 * Takes back one change, or without an id the newest that still stands, with all that was made as one with it; taking back
 * a `restored` line does the change again.
 *
 * @returns what was done; or the problems `nothingToUndo`, `conflict` where a record has moved on, `historyOnly` for what was
 *   written before the data file changed its form, or `goneForGood` for a person
 */
export const undoChange = async (
  db: Database,
  desk: Desk,
  stores: Stores,
  id: number | undefined,
): Promise<Result<Undone>> => {
  const schemaVersion = desk.access.schemaVersion()
  const line = id === undefined ? await newestStanding(db, schemaVersion) : await lineOf(db, id)
  if (line === undefined) return failed(problem('nothingToUndo'))
  if (line.action === 'purged') return failed(problem('goneForGood', 'id'))
  if (line.schemaVersion !== schemaVersion) return failed(problem('historyOnly', 'id'))
  const back = await asOne(db, async () => takeBackAll(db, desk, stores, await groupOf(db, line)))
  if (!back.ok) return back
  // As in the list of changes, the one that was made first speaks for all.
  const first = back.value.value.at(-1) as Line
  const [named = first] = await withToolNames(db, [first])
  return ok({ change: changeOfRow(named, back.value.value.length), touched: back.value.value })
}

/** Which lines of the log are asked for. */
interface Asked {
  readonly most: number
  readonly entityId?: string | undefined
  /** `removed`: what took something away and was not taken back. */
  readonly only: 'all' | 'removed'
}

const countsOf = async (db: Database, rows: readonly Line[]): Promise<ReadonlyMap<number, number>> => {
  const groups = rows.flatMap(({ groupId }) => (groupId === null ? [] : [groupId]))
  if (groups.length === 0) return new Map()
  const counted = await db
    .selectFrom('change')
    .select((line) => ['groupId', line.fn.countAll<number>().as('count')])
    .where('groupId', 'in', groups)
    .groupBy('groupId')
    .execute()
  return new Map(counted.map(({ groupId, count }) => [groupId as number, count]))
}

/** @returns the newest lines, newest first, without what the program did by itself */
export const listChanges = async (db: Database, { most, entityId, only }: Asked): Promise<Change[]> => {
  let query = db.selectFrom('change').selectAll().where('unasked', '=', 0)
  if (entityId !== undefined) query = query.where('entityId', '=', entityId)
  // Of changes made as one, the first speaks for all; asked of one record, its own line speaks.
  else query = query.where((line) => line.or([line('groupId', 'is', null), line('groupId', '=', line.ref('id'))]))
  if (only === 'removed') query = query.where('action', '=', 'removed').where('undoneBy', 'is', null)
  const rows = await withToolNames(db, await query.orderBy('id', 'desc').limit(most).execute())
  const counts = await countsOf(db, rows)
  return rows.map((row) => changeOfRow(row, counts.get(row.groupId ?? 0) ?? 1))
}
