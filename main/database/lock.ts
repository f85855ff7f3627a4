import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'

/** The hold on a data folder. */
export interface FolderLock {
  release(): void
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
    const isHeld = error instanceof BetterSqlite.SqliteError && error.code.startsWith('SQLITE_BUSY')
    const detail = error instanceof Error ? error.message : String(error)
    return failed(problem(isHeld ? 'folderInUse' : 'folderNotOpened', '', { folder, detail }))
  }
}
