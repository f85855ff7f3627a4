import { closeSync, fsyncSync, mkdirSync, openSync, readdirSync, renameSync, rmSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'
import type BetterSqlite from 'better-sqlite3'
import { openReading } from './openReading.ts'

/** What a copy is called until it is whole. */
const UNFINISHED = '.unfinished'

const syncOpened = (path: string, flags: 'r' | 'r+'): void => {
  const handle = openSync(path, flags)
  try {
    fsyncSync(handle)
  } finally {
    closeSync(handle)
  }
}

/** A rename is only safe on disk once its folder is; Windows cannot open a folder and needs no such step. */
export const syncFolder = (folder: string): void => {
  if (process.platform === 'win32') return
  syncOpened(folder, 'r')
}

/**
 * Deletes what unfinished copies have left in a folder, with SQLite's own files beside them. What cannot be deleted now is
 * left to the next start: it is in nobody's way, and no reason not to open the data.
 *
 * @param beginning of the names of those that are meant
 */
export const deleteUnfinished = (folder: string, beginning: string): void => {
  try {
    const names = readdirSync(folder).filter((name) => name.startsWith(beginning) && name.includes(UNFINISHED))
    for (const name of names) rmSync(join(folder, name), { force: true })
  } catch {}
}

const check = (path: string): void => {
  const copy = openReading(path)
  try {
    const answer = copy.pragma('quick_check', { simple: true })
    if (answer !== 'ok') throw new Error(`the copy is not sound: ${String(answer)}`)
  } finally {
    copy.close()
  }
}

/**
 * A whole, checked copy of an open data file: written beside its place under another name, checked, synced, then renamed,
 * so that a file of the final name is always a good one. Copying the file itself would miss what still is in the log beside it.
 *
 * @throws when the disk is full or the copy is not sound; nothing is then left at `target`
 */
export const copyDatabase = (file: BetterSqlite.Database, target: string): void => {
  const unfinished = `${target}${UNFINISHED}`
  mkdirSync(dirname(target), { recursive: true })
  rmSync(unfinished, { force: true })
  try {
    file.prepare('VACUUM INTO ?').run(unfinished)
    check(unfinished)
    syncOpened(unfinished, 'r+')
    renameSync(unfinished, target)
  } catch (error) {
    deleteUnfinished(dirname(target), basename(unfinished))
    throw error
  }
  syncFolder(dirname(target))
}

/** As `copyDatabase`, of a data file or a copy by its path; it may be open elsewhere. */
export const copyDataFile = (path: string, target: string): void => {
  const reading = openReading(path)
  try {
    copyDatabase(reading, target)
  } finally {
    reading.close()
  }
}
