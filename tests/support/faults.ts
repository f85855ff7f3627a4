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
