import BetterSqlite from 'better-sqlite3'
import { type Problem, problem } from '../../geometry/result.ts'

/** What the user can do something about, by the beginning of SQLite's own code. */
const known: readonly (readonly [string, string])[] = [
  ['SQLITE_FULL', 'diskFull'],
  ['SQLITE_CONSTRAINT', 'conflict'],
  ['SQLITE_CORRUPT', 'dataDamaged'],
  ['SQLITE_NOTADB', 'dataDamaged'],
]

/** @returns an unforeseen error as the problem a client hears of */
export const faultOf = (error: unknown): Problem => {
  const code = error instanceof BetterSqlite.SqliteError ? error.code : ''
  const match = known.find(([beginning]) => code.startsWith(beginning))
  return problem(match === undefined ? 'serviceFailed' : match[1])
}

/** @returns what the system says of an error, for the part of a sentence that only an expert can use */
export const faultText = (error: unknown): string => (error instanceof Error ? error.message : String(error))
