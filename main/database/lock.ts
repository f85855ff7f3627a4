import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { failed, ok, type Problem, problem, type Result } from '../../geometry/result.ts'
import { faultText } from './fault.ts'

/** The hold on a data folder. */
export interface FolderLock {
  release(): void
}

/** What the user can do something about, by the beginning of the code of Node or SQLite. */
const reasons: readonly (readonly [string, string])[] = [
  ['SQLITE_BUSY', 'folderInUse'],
  ['EEXIST', 'folderIsFile'],
  ['ENOTDIR', 'folderIsFile'],
  ['ENOSPC', 'folderNoRoom'],
  ['SQLITE_FULL', 'folderNoRoom'],
  ['EACCES', 'folderNotWritable'],
  ['EPERM', 'folderNotWritable'],
  ['EROFS', 'folderNotWritable'],
  // Node's word for a folder it cannot make on a disk that takes no writing.
  ['ENOENT', 'folderNotWritable'],
  ['SQLITE_CANTOPEN', 'folderNotWritable'],
  ['SQLITE_READONLY', 'folderNotWritable'],
]

/** @returns why a data folder cannot be used, in the program's own codes; a reason not foreseen in the system's words */
export const folderProblem = (error: unknown, folder: string): Problem => {
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  const found = reasons.find(([beginning]) => code.startsWith(beginning))
  const detail = faultText(error)
  return found === undefined ? problem('folderNotOpened', '', { folder, detail }) : problem(found[1], '', { folder })
}

/**
 * Takes the data folder for this program alone, whichever host it runs in. The hold is a lock of the operating system on
 * a file there, so it ends with the process however that ends: no stale lock can keep the user out.
 */
export const lockFolder = (folder: string): Result<FolderLock> => {
  let file: BetterSqlite.Database | null = null
  try {
    mkdirSync(folder, { recursive: true })
    file = new BetterSqlite(join(folder, 'inUse.lock'), { timeout: 0 })
    file.exec('BEGIN EXCLUSIVE')
    const held = file
    return ok({ release: () => void held.close() })
  } catch (error) {
    file?.close()
    return failed(folderProblem(error, folder))
  }
}
