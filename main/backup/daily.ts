import { existsSync, readdirSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { copyDatabase } from './copyFile.ts'

/** Two working weeks: long enough to notice a slip, short enough to stay small. */
const BACKUPS_KEPT = 10

/** @returns where copies of a data file are kept */
export const backupFolder = (path: string): string => join(dirname(path), 'backups')

const stem = (path: string): string => basename(path, '.db')

const dailyCopies = (path: string): string[] =>
  readdirSync(backupFolder(path))
    .filter((name) => new RegExp(`^${stem(path)}-\\d{4}-\\d\\d-\\d\\d\\.db$`).test(name))
    .sort()

/**
 * Copies a data file once a day, unasked, and keeps the newest ten. It reads over a connection of its own, so that no
 * write waits for it.
 *
 * @returns the new copy's path, or null where today's is there already
 * @throws when the copy cannot be written; the data file is untouched
 */
export const backUpDaily = (path: string, now: Date): string | null => {
  const target = join(backupFolder(path), `${stem(path)}-${now.toISOString().slice(0, 10)}.db`)
  if (existsSync(target)) return null
  const reading = new BetterSqlite(path, { readonly: true, fileMustExist: true })
  try {
    copyDatabase(reading, target)
  } finally {
    reading.close()
  }
  for (const name of dailyCopies(path).slice(0, -BACKUPS_KEPT)) rmSync(join(backupFolder(path), name))
  return target
}
