import { rmSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { quantities } from '../../geometry/quantities.ts'
import { backupFolder, copyPath, listCopies } from './copies.ts'
import { copyDatabase } from './copyFile.ts'
import { copiesToDrop } from './retention.ts'

/** At most this much work is lost with the data file (ms). */
const HOUR_MS = 3_600_000
const BYTES_PER_MB = 1e6

/** @returns what all copies of a data file may weigh: hundreds of a workshop's, a handful of the largest, unless its settings say otherwise */
const mostCopiesBytes = (file: BetterSqlite.Database): number => {
  const set = file.prepare('SELECT copiesMostMb FROM settings WHERE deletedAt IS NULL').pluck().get()
  return Number(set ?? quantities.care.copiesMostMb.defaultValue) * BYTES_PER_MB
}

/** Whether an hour has gone by since a copy, in either direction: a clock set back must not stop the copies. @param at null: there is none */
export const isCopyDue = (at: Date | null, now: Date): boolean =>
  at === null || Math.abs(now.getTime() - at.getTime()) >= HOUR_MS

const newestAt = (path: string): Date | null => {
  const newest = listCopies(path).find(({ kind }) => kind === 'kept')
  return newest === undefined ? null : new Date(newest.at)
}

/**
 * Copies a data file, over a connection of its own, and lets go of copies that are one too many, by the weight that the
 * settings in it allow.
 *
 * @returns the new copy's path
 * @throws when the copy cannot be written; the data file and the copies there are untouched
 */
export const backUp = (path: string, now: Date): string => {
  const target = copyPath(path, 'kept', now)
  let mostBytes: number
  const reading = new BetterSqlite(path, { readonly: true, fileMustExist: true })
  try {
    copyDatabase(reading, target)
    mostBytes = mostCopiesBytes(reading)
  } finally {
    reading.close()
  }
  for (const { name } of copiesToDrop(listCopies(path), now, mostBytes)) rmSync(join(backupFolder(path), name))
  return target
}

/** As `backUp`, where an hour has passed since the last one. @returns when the newest copy was made, now or before */
export const backUpIfDue = (path: string, now: Date): Date => {
  const newest = newestAt(path)
  if (newest !== null && !isCopyDue(newest, now)) return newest
  backUp(path, now)
  return now
}
