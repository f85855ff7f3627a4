import { existsSync, statSync } from 'node:fs'
import { basename } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { Kysely } from 'kysely'
import { failed, ok, type Problem, problem, type Result } from '../../geometry/result.ts'
import { backupFolder } from '../backup/copies.ts'
import { faultOf, faultText } from './fault.ts'
import { isSound, moveAside, stoppedUncleanly, tellsOfDamage } from './health.ts'
import { ImmediateDialect, keepingStatements } from './immediateDialect.ts'
import { migrate, schemaVersionOf } from './migrate.ts'
import { migrations as allMigrations, type Migration } from './migrations.ts'
import type { Database, Tables } from './schema.ts'
import { isBlank, stranger } from './stranger.ts'

/** Longer than any of our own transactions; another connection only reads. */
const BUSY_TIMEOUT_MS = 5000
/** A query slower than this is felt at the screen, and is told to the log. */
const SLOW_QUERY_MS = 40

/** A file no larger is checked thoroughly at every start: it takes some 60 ms more at this size, of half a second. */
const LITTLE_BYTES = 8e6

/** A rack's file, open. `notices` are what the user should hear of though all is well now. */
export interface OpenDatabase {
  readonly db: Database
  readonly schemaVersion: number
  readonly notices: readonly Problem[]
  close(): Promise<void>
}

interface OpenOptions {
  readonly now: Date
  readonly migrations?: readonly Migration[]
  readonly log?: (line: string) => void
}

const IN_MEMORY = ':memory:'

const setPragmas = (file: BetterSqlite.Database): void => {
  file.pragma('journal_mode = WAL')
  file.pragma('synchronous = FULL')
  file.pragma('foreign_keys = ON')
}

/** What may be planted in a file can call nothing that does harm, not even while it is checked. */
const connect = (path: string): BetterSqlite.Database => {
  const file = new BetterSqlite(path, { timeout: BUSY_TIMEOUT_MS })
  file.pragma('trusted_schema = OFF')
  return file
}

/** @returns an open connection to a sound file, and the notice of a damaged one that was moved aside */
const connectSound = (path: string, now: Date): { file: BetterSqlite.Database; notices: readonly Problem[] } => {
  const isNew = path === IN_MEMORY || !existsSync(path)
  const thorough = !isNew && (stoppedUncleanly(path) || statSync(path).size <= LITTLE_BYTES)
  const file = connect(path)
  if (isNew || isSound(file, thorough)) return { file, notices: [] }
  file.close()
  const aside = moveAside(path, now)
  return { file: connect(path), notices: [problem('rackMovedAside', '', { file: aside, backups: backupFolder(path) })] }
}

const queryLog =
  (log: ((line: string) => void) | undefined) => (event: { queryDurationMillis: number; query: { sql: string } }) => {
    if (event.queryDurationMillis > SLOW_QUERY_MS)
      log?.(`slow query, ${event.queryDurationMillis.toFixed(0)} ms: ${event.query.sql}`)
  }

const bringUpToDate = (
  file: BetterSqlite.Database,
  path: string,
  { now, migrations = allMigrations }: OpenOptions,
): Problem | null => {
  const refusal = isBlank(file) ? null : stranger(file, path, migrations)
  if (refusal) return refusal
  setPragmas(file)
  migrate(
    file,
    migrations,
    path === IN_MEMORY ? null : { folder: backupFolder(path), stem: basename(path, '.db'), now },
  )
  return null
}

/** @returns an error that came while a data file was opened, in words */
export const notOpened = (error: unknown, path: string): Problem => {
  if (tellsOfDamage(error)) return problem('dataDamaged', '', { file: path })
  if (faultOf(error).code === 'diskFull') return problem('rackNoRoom', '', { file: path })
  return problem('rackNotOpened', '', { file: path, detail: faultText(error) })
}

/**
 * Opens a rack's file, made if it is not there: checks it, moves a damaged one aside, refuses what is not ours, newer
 * than this program or planted, and brings an older one up to date.
 *
 * @param path the file, or `:memory:`
 */
export const openDatabase = (path: string, options: OpenOptions): Result<OpenDatabase> => {
  let file: BetterSqlite.Database | null = null
  try {
    const sound = connectSound(path, options.now)
    file = sound.file
    const refusal = bringUpToDate(file, path, options)
    if (refusal) {
      file.close()
      return failed(refusal)
    }
    const raw = file
    const db = new Kysely<Tables>({
      dialect: new ImmediateDialect({ database: keepingStatements(raw) }),
      log: queryLog(options.log),
    })
    const close = async () => void raw.close()
    return ok({ db, schemaVersion: schemaVersionOf(raw), notices: sound.notices, close })
  } catch (error) {
    file?.close()
    return failed(notOpened(error, path))
  }
}
