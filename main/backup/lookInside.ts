import type BetterSqlite from 'better-sqlite3'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { isSound, tellsOfDamage } from '../database/health.ts'
import { migrations } from '../database/migrations.ts'
import { stranger } from '../database/stranger.ts'
import { openReading } from './openReading.ts'

/** What a copy holds. */
export interface CopyContents {
  readonly tools: number
  readonly logLines: number
  /** When something was last changed in it, UTC; null: nothing ever was. */
  readonly changedAt: string | null
}

const count = (file: BetterSqlite.Database, table: 'tool' | 'benchLog'): number =>
  Number(file.prepare(`SELECT count(*) FROM ${table} WHERE deletedAt IS NULL`).pluck().get())

const read = (file: BetterSqlite.Database, path: string): Result<CopyContents> => {
  if (!isSound(file, true)) return failed(problem('copyDamaged', '', { file: path }))
  const refusal = stranger(file, path, migrations)
  if (refusal !== null) return failed(refusal)
  const changedAt = file.prepare('SELECT max(at) FROM change').pluck().get() as string | null
  return ok({ tools: count(file, 'tool'), logLines: count(file, 'benchLog'), changedAt })
}

/** Looks into a copy without changing it. @returns what it holds, or why nobody could go back to it */
export const lookInside = (path: string): Result<CopyContents> => {
  let file: BetterSqlite.Database | null = null
  try {
    file = openReading(path)
    return read(file, path)
  } catch (error) {
    if (tellsOfDamage(error)) return failed(problem('copyDamaged', '', { file: path }))
    return failed(problem('copyNotRead', '', { file: path, detail: error instanceof Error ? error.message : '' }))
  } finally {
    file?.close()
  }
}
