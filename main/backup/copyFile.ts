import { closeSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync } from 'node:fs'
import { dirname } from 'node:path'
import BetterSqlite from 'better-sqlite3'

const sync = (path: string): void => {
  const handle = openSync(path, 'r+')
  fsyncSync(handle)
  closeSync(handle)
}

/** A rename is only safe on disk once its folder is; Windows cannot open a folder and needs no such step. */
export const syncFolder = (folder: string): void => {
  if (process.platform === 'win32') return
  const handle = openSync(folder, 'r')
  fsyncSync(handle)
  closeSync(handle)
}

const check = (path: string): void => {
  const copy = new BetterSqlite(path, { readonly: true, fileMustExist: true })
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
  const unfinished = `${target}.unfinished`
  mkdirSync(dirname(target), { recursive: true })
  rmSync(unfinished, { force: true })
  try {
    file.prepare('VACUUM INTO ?').run(unfinished)
    check(unfinished)
    sync(unfinished)
    renameSync(unfinished, target)
  } finally {
    rmSync(unfinished, { force: true })
  }
  syncFolder(dirname(target))
}
