import fs from 'node:fs'
import { syncBuiltinESMExports } from 'node:module'
import BetterSqlite from 'better-sqlite3'

/** A connection whose `nth` statement fails as on a full disk; all others run on the real file. */
export interface Failing {
  readonly file: BetterSqlite.Database
  /** How many statements were asked for. */
  statements(): number
}

const RUNS = new Set(['exec', 'pragma', 'run', 'get', 'all'])

/** @param nth counted from 1; 0: none fails */
export const failingAt = (real: BetterSqlite.Database, nth: number): Failing => {
  let statements = 0
  const watched = <T extends object>(target: T): T =>
    new Proxy(target, {
      get: (_, key) => {
        const value = Reflect.get(target, key, target) as unknown
        if (typeof value !== 'function') return value
        return (...given: unknown[]) => {
          if (RUNS.has(String(key)) && ++statements === nth)
            throw new BetterSqlite.SqliteError('no room', 'SQLITE_FULL')
          const answer = Reflect.apply(value, target, given) as unknown
          return key === 'prepare' || key === 'pluck' ? watched(answer as object) : answer
        }
      },
    })
  return { file: watched(real), statements: () => statements }
}

/** Calls that change or read what is on the disk; asking whether something is there never fails. */
const fileCalls = [
  'openSync',
  'closeSync',
  'fsyncSync',
  'mkdirSync',
  'renameSync',
  'rmSync',
  'statSync',
  'readdirSync',
  'readFileSync',
  'writeSync',
] as const
const statementCalls = ['run', 'get', 'all'] as const
const connectionCalls = ['exec', 'pragma'] as const

/** How a call fails: before it did anything; after all of it; or before, with all that come after it. */
export type FailingHow = 'before' | 'after' | 'onwards'
export type FailingWhat = 'file' | 'statement'

const noRoom = (what: FailingWhat): Error =>
  what === 'file'
    ? Object.assign(new Error('ENOSPC: no space left on device'), { code: 'ENOSPC' })
    : new BetterSqlite.SqliteError('database or disk is full', 'SQLITE_FULL')

type Owner = Record<string, (...given: unknown[]) => unknown>

const ownersOf = (what: FailingWhat): readonly (readonly [Owner, readonly string[]])[] => {
  if (what === 'file') return [[fs as unknown as Owner, fileCalls]]
  const file = new BetterSqlite(':memory:')
  const statement = Object.getPrototypeOf(file.prepare('SELECT 1')) as Owner
  file.close()
  return [
    [statement, statementCalls],
    [BetterSqlite.prototype as unknown as Owner, connectionCalls],
  ]
}

/** What a full disk leaves of a copy is a part of it. */
const leavesPart = (call: unknown): boolean =>
  String((call as { source?: string } | undefined)?.source).startsWith('VACUUM INTO')

/** Calls that fail, whoever makes them, for a while. */
export interface FailingCalls {
  /** How many were made. */
  calls(): number
  end(): void
}

/**
 * Lets a call of this whole process to the file system or to SQLite fail, as on a full disk.
 *
 * @param nth counted from 1; 0: none fails
 */
export const failingCalls = (what: FailingWhat, nth: number, how: FailingHow = 'before'): FailingCalls => {
  let calls = 0
  const originals = ownersOf(what).flatMap(([owner, names]) => names.map((name) => [owner, name, owner[name]] as const))
  for (const [owner, name, original] of originals) {
    owner[name] = function (this: unknown, ...given: unknown[]) {
      calls += 1
      const fails = calls === nth || (how === 'onwards' && nth > 0 && calls > nth)
      if (!fails) return Reflect.apply(original as () => unknown, this, given)
      if (how === 'after' || leavesPart(this)) Reflect.apply(original as () => unknown, this, given)
      throw noRoom(what)
    }
  }
  syncBuiltinESMExports()
  return {
    calls: () => calls,
    end: () => {
      for (const [owner, name, original] of originals) owner[name] = original as () => unknown
      syncBuiltinESMExports()
    },
  }
}
