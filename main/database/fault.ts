import { z } from 'zod'
import { type Problem, problem } from '../../geometry/result.ts'

/** What the user can do something about, by the beginning of the code of SQLite or of the system. */
const known: readonly (readonly [string, string])[] = [
  ['SQLITE_FULL', 'diskFull'],
  ['SQLITE_CONSTRAINT', 'conflict'],
  ['SQLITE_BUSY', 'dataBusy'],
  ['SQLITE_LOCKED', 'dataBusy'],
  ['SQLITE_READONLY', 'dataReadOnly'],
  ['SQLITE_IOERR', 'diskFault'],
  ['SQLITE_CORRUPT', 'dataDamaged'],
  ['SQLITE_NOTADB', 'dataDamaged'],
  ['ENOSPC', 'diskFull'],
  ['EDQUOT', 'diskFull'],
  ['EIO', 'diskFault'],
  ['EROFS', 'dataReadOnly'],
  ['EACCES', 'dataReadOnly'],
  ['EPERM', 'dataReadOnly'],
]

/** The code of what the file holds and this program never wrote. */
export const UNREADABLE = 'dataUnreadable'

/** Text that should be JSON and is not, or a record that is none by its schema: as long as nobody has looked, the file holds what this program never wrote. */
const isUnreadable = (error: unknown): boolean => error instanceof SyntaxError || error instanceof z.ZodError

/** @returns an unforeseen error as the problem a client hears of */
export const faultOf = (error: unknown): Problem => {
  if (isUnreadable(error)) return problem(UNREADABLE)
  const code = error instanceof Error && 'code' in error ? String(error.code) : ''
  const match = known.find(([beginning]) => code.startsWith(beginning))
  return problem(match === undefined ? 'serviceFailed' : match[1])
}

/** @returns what the system says of an error, for the part of a sentence that only an expert can use */
export const faultText = (error: unknown): string => (error instanceof Error ? error.message : String(error))
