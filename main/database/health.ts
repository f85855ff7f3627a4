import { existsSync, renameSync, statSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { syncFolder } from '../backup/copyFile.ts'

/** What SQLite says of a file whose bytes are no longer a database. */
const DAMAGED = new Set(['SQLITE_CORRUPT', 'SQLITE_NOTADB'])

/** @returns whether an error means that the file itself is damaged, not busy, locked or unreadable */
export const tellsOfDamage = (error: unknown): boolean =>
  error instanceof BetterSqlite.SqliteError && DAMAGED.has(error.code.split('_').slice(0, 2).join('_'))

/** A log beside the file with something in it: the program was not closed, it stopped. */
export const stoppedUncleanly = (path: string): boolean => existsSync(`${path}-wal`) && statSync(`${path}-wal`).size > 0

/** @param thorough the slower check, which also compares every index with its table */
export const isSound = (file: BetterSqlite.Database, thorough: boolean): boolean => {
  try {
    return file.pragma(thorough ? 'integrity_check' : 'quick_check', { simple: true }) === 'ok'
  } catch (error) {
    if (tellsOfDamage(error)) return false
    throw error
  }
}

/**
 * Moves a damaged file out of the way with what belongs to it; nothing is ever deleted, since parts may still be read.
 *
 * @returns where it went
 */
export const moveAside = (path: string, now: Date): string => {
  const moment = now.toISOString().replaceAll(':', '-')
  const aside = join(dirname(path), `${basename(path, '.db')}-damaged-${moment}.db`)
  for (const ending of ['-wal', '-shm', '']) {
    if (existsSync(path + ending)) renameSync(path + ending, aside + ending)
  }
  syncFolder(dirname(path))
  return aside
}
