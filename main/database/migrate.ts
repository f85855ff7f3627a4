import { join } from 'node:path'
import type BetterSqlite from 'better-sqlite3'
import { copyDatabase } from '../backup/copyFile.ts'
import type { Migration } from './migrations.ts'

/** Marks a file as a rack of this program: "Cmbw" in ASCII. */
export const APPLICATION_ID = 0x436d6277

/** Where a file stands before it is opened for use. */
export const schemaVersionOf = (file: BetterSqlite.Database): number =>
  Number(file.pragma('user_version', { simple: true }))

const holdsTables = (file: BetterSqlite.Database): boolean =>
  file.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() !== 0

const runOne = (file: BetterSqlite.Database, migration: Migration): void => {
  file
    .transaction(() => {
      migration.up(file)
      const broken = file.pragma('foreign_key_check') as unknown[]
      if (broken.length > 0) throw new Error(`migration ${migration.version} leaves ${broken.length} broken references`)
      file.pragma(`application_id = ${APPLICATION_ID}`)
      file.pragma(`user_version = ${migration.version}`)
    })
    .immediate()
}

/**
 * Brings a file up to date, one migration and one transaction at a time; before each, a file that holds data is copied.
 *
 * @param backups folder for the copies, named by the version they hold; null for a file that is only in memory
 * @throws what a migration or a copy throws; the file then stands at the last version that was finished
 */
export const migrate = (
  file: BetterSqlite.Database,
  migrations: readonly Migration[],
  backups: { readonly folder: string; readonly stem: string; readonly now: Date } | null,
): void => {
  // A file that is only being made passes through every version; there is nothing in it to copy.
  const held = holdsTables(file)
  for (const migration of migrations.filter(({ version }) => version > schemaVersionOf(file))) {
    if (backups && held) {
      const moment = backups.now.toISOString().replaceAll(':', '-')
      copyDatabase(file, join(backups.folder, `${backups.stem}-schema${schemaVersionOf(file)}-${moment}.db`))
    }
    runOne(file, migration)
  }
}
