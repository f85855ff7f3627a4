import { createHash } from 'node:crypto'
import type BetterSqlite from 'better-sqlite3'

/** Of a full-text index, as SQLite itself lays it out, which another release of it may do otherwise; and of its statistics. */
const OF_SQLITE = `name LIKE 'toolSearch\\_%' ESCAPE '\\' AND type = 'table' AND sql LIKE 'CREATE TABLE ''toolSearch\\_%' ESCAPE '\\'
  OR name LIKE 'sqlite\\_stat%' ESCAPE '\\'`

/**
 * Everything that is laid down in a file, tables, indexes, views and triggers with their text, as one digest: a trigger or a
 * view that somebody planted, or another text of one of ours, makes another.
 */
export const schemaDigest = (file: BetterSqlite.Database): string => {
  const rows = file
    .prepare(`SELECT type, name, tbl_name, sql FROM sqlite_schema WHERE NOT (${OF_SQLITE}) ORDER BY type, name`)
    .raw()
    .all()
  return createHash('sha256').update(JSON.stringify(rows)).digest('hex')
}

/**
 * Whether a data file with our mark holds what this program never wrote: such a thing would run with the next change.
 *
 * @param schemas digest by version, of those that were released
 */
export const isPlanted = (
  file: BetterSqlite.Database,
  version: number,
  schemas: readonly { readonly version: number; readonly schema?: string }[],
): boolean => {
  const expected = schemas.find((each) => each.version === version)?.schema
  return expected !== undefined && expected !== schemaDigest(file)
}
