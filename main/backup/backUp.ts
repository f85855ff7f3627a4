import { rmSync } from 'node:fs'
import { join } from 'node:path'
import type BetterSqlite from 'better-sqlite3'
import { quantities } from '../../geometry/quantities.ts'
import { type Problem, problem } from '../../geometry/result.ts'
import { faultText } from '../database/fault.ts'
import { backupFolder, copyPath, listCopies } from './copies.ts'
import { copyDatabase } from './copyFile.ts'
import { openReading } from './openReading.ts'
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

const dropCopies = (path: string, now: Date, mostBytes: number): readonly Problem[] => {
  try {
    for (const { name } of copiesToDrop(listCopies(path), now, mostBytes)) rmSync(join(backupFolder(path), name))
    return []
  } catch (error) {
    return [problem('oldCopiesStay', '', { folder: backupFolder(path), detail: faultText(error) })]
  }
}

/**
 * Copies a data file, over a connection of its own, and lets go of copies that are one too many, by the weight that the
 * settings in it allow.
 *
 * @returns what should be heard of though the copy is made
 * @throws when the copy cannot be written; the data file and the copies there are untouched
 */
export const backUp = (path: string, now: Date): readonly Problem[] => {
  let mostBytes: number
  const reading = openReading(path)
  try {
    mostBytes = mostCopiesBytes(reading)
    copyDatabase(reading, copyPath(path, 'kept', now))
  } finally {
    reading.close()
  }
  return dropCopies(path, now, mostBytes)
}

/** As `backUp`, where an hour has passed since the last one. @returns when the newest copy was made, now or before */
export const backUpIfDue = (path: string, now: Date): { readonly at: Date; readonly notices: readonly Problem[] } => {
  const newest = newestAt(path)
  if (newest !== null && !isCopyDue(newest, now)) return { at: newest, notices: [] }
  return { at: now, notices: backUp(path, now) }
}
