import { existsSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs'
import BetterSqlite from 'better-sqlite3'
import { backupFolder, copyPath } from './copies.ts'
import { copyDatabase, syncFolder } from './copyFile.ts'

/** A copy on its way to become the data file stands here, whole, beside it. */
const comingPath = (path: string): string => `${path}.comingBack`

/** The calls that move files; tests let the n-th of them fail. */
export interface FileMoves {
  rename(from: string, to: string): void
}

const realMoves: FileMoves = { rename: renameSync }

/**
 * Brings a copy beside the data file, checked and synced; the data file may still be open.
 *
 * @throws where it cannot be read or written; nothing has then changed
 */
export const bringBeside = (path: string, copy: string): void => {
  const reading = new BetterSqlite(copy, { readonly: true, fileMustExist: true })
  try {
    copyDatabase(reading, comingPath(path))
  } finally {
    reading.close()
  }
}

const refuseIfInUse = (path: string): void => {
  const log = `${path}-wal`
  if (existsSync(log) && statSync(log).size > 0) throw new Error('another program has the data file open')
}

/**
 * Puts what `bringBeside` brought in the data file's place. The file that was there becomes a copy itself, so that there is
 * a way back. The data file must be closed.
 *
 * @throws where a file cannot be moved; the data file is then the one that was there
 */
export const changePlaces = (path: string, now: Date, { rename }: FileMoves = realMoves): void => {
  refuseIfInUse(path)
  const aside = copyPath(path, 'beforeGoingBack', now)
  mkdirSync(backupFolder(path), { recursive: true })
  try {
    rename(path, aside)
    rename(comingPath(path), path)
  } catch (error) {
    if (!existsSync(path) && existsSync(aside)) renameSync(aside, path)
    rmSync(comingPath(path), { force: true })
    throw error
  }
  syncFolder(backupFolder(path))
}

/** Ends a going back that was cut short: done where the old file was already put aside, undone where it was not. */
export const finishGoingBack = (path: string): void => {
  const coming = comingPath(path)
  if (!existsSync(coming)) return
  if (existsSync(path)) rmSync(coming)
  else renameSync(coming, path)
}
