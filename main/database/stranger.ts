import { createHash } from 'node:crypto'
import type BetterSqlite from 'better-sqlite3'
import { type Problem, problem } from '../../geometry/result.ts'
import { APPLICATION_ID, schemaVersionOf } from './migrate.ts'
import type { Migration } from './migrations.ts'

/** What SQLite itself adds where somebody had it count (ANALYZE): figures, nothing that runs. */
const statistics: ReadonlySet<unknown> = new Set([
  'CREATE TABLE sqlite_stat1(tbl,idx,stat)',
  'CREATE TABLE sqlite_stat4(tbl,idx,neq,nlt,ndlt,sample)',
])

/** Tables behind the full-text index as SQLite lays them out: another release may do it otherwise, and must not lock anybody out. */
const isOfFullText = (sql: unknown): boolean => String(sql).startsWith("CREATE TABLE 'toolSearch_")

/** @returns the mark of a file's schema: equal for equal tables, columns, indexes, views and triggers, whatever is in them */
export const schemaMark = (file: BetterSqlite.Database): string => {
  const rows = file
    .prepare<[], readonly unknown[]>('SELECT sql, type, name, tbl_name FROM sqlite_schema ORDER BY type, name')
    .raw()
    .all()
    .filter(([sql]) => !statistics.has(sql) && !isOfFullText(sql))
    .map(([sql, ...rest]) => [String(sql).replace(/\s+/g, ' '), ...rest])
  return createHash('sha256').update(JSON.stringify(rows)).digest('hex')
}

/** Whether nothing at all has been written to a file. */
export const isBlank = (file: BetterSqlite.Database): boolean =>
  file.pragma('application_id', { simple: true }) === 0 &&
  schemaVersionOf(file) === 0 &&
  file.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() === 0

/**
 * Why a file is none to work with: not ours, newer than this program, or with a schema that no version of ours made. A
 * trigger, view, generated column or table that was planted could change or hide records by itself.
 *
 * @param file is only read, and none of its tables
 */
export const stranger = (
  file: BetterSqlite.Database,
  path: string,
  migrations: readonly Migration[],
): Problem | null => {
  if (file.pragma('application_id', { simple: true }) !== APPLICATION_ID) return problem('notARack', '', { file: path })
  const version = schemaVersionOf(file)
  const newest = migrations.at(-1)?.version ?? 0
  if (version > newest) return problem('rackTooNew', '', { file: path, version, newest })
  const known = migrations.find((each) => each.version === version)
  return known?.mark === schemaMark(file) ? null : problem('rackPlanted', '', { file: path })
}
