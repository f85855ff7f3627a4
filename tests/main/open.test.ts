import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { sql } from 'kysely'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Migration, migrations } from '../../main/database/migrations.ts'
import { type OpenDatabase, openDatabase } from '../../main/database/open.ts'
import { codesOf, openOwnBench, temporaryFolder, toolDraft } from './support.ts'

const NOW = new Date('2026-03-04T05:06:07.000Z')

let place: ReturnType<typeof temporaryFolder>
let path: string
beforeEach(() => {
  place = temporaryFolder()
  path = join(place.folder, 'own.db')
})
afterEach(() => place.remove())

const open = (list: readonly Migration[] = migrations): OpenDatabase => {
  const opened = openDatabase(path, { now: NOW, migrations: list })
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
  return opened.value
}

const makeFile = async (list: readonly Migration[] = migrations) => (await open(list)).close()

const pragmaOf = async ({ db }: OpenDatabase, name: string) =>
  Object.values((await sql.raw<Record<string, unknown>>(`pragma ${name}`).execute(db)).rows[0] ?? {})[0]

const NEWEST = migrations.length

/** The list of this program and one migration more, as the next release will have it. */
const nextRelease: readonly Migration[] = [
  ...migrations,
  {
    version: NEWEST + 1,
    mark: '',
    up: (file) => void file.exec("ALTER TABLE tool ADD COLUMN ballast TEXT NOT NULL DEFAULT ''"),
  },
]

const withTool = async () => {
  const bench = await openOwnBench(place.folder)
  await bench.done('tool.add', { ...toolDraft, name: 'kept' })
  await bench.workshop.close()
}

describe('a data file', () => {
  it('is opened with the settings that keep it whole', async () => {
    const opened = open()
    const names = [
      'journal_mode',
      'synchronous',
      'foreign_keys',
      'trusted_schema',
      'busy_timeout',
      'user_version',
      'application_id',
    ]
    expect(await Promise.all(names.map((name) => pragmaOf(opened, name)))).toEqual([
      'wal',
      2,
      1,
      0,
      5000,
      migrations.length,
      0x436d6277,
    ])
    await opened.close()
    expect(readdirSync(place.folder)).toEqual(['own.db'])
  })

  it('takes the write lock when a write begins, so that nobody can write in between', async () => {
    const opened = open()
    const other = new BetterSqlite(path, { timeout: 0 })
    await opened.db.transaction().execute(async (db) => {
      await db.selectFrom('tool').selectAll().execute()
      expect(() => other.exec('BEGIN IMMEDIATE')).toThrow(/locked/)
    })
    other.close()
    await opened.close()
  })

  it('of a newer program is refused and left as it is', async () => {
    await makeFile(nextRelease)
    const before = readFileSync(path)
    const refused = openDatabase(path, { now: NOW })
    expect(refused).toMatchObject({
      problems: [{ code: 'rackTooNew', params: { version: NEWEST + 1, newest: NEWEST } }],
    })
    expect(readFileSync(path).equals(before)).toBe(true)
  })

  it('of another program is refused and left as it is', () => {
    const other = new BetterSqlite(path)
    other.exec('CREATE TABLE recipes (name TEXT)')
    other.close()
    const before = readFileSync(path)
    expect(codesOf(openDatabase(path, { now: NOW }))).toEqual(['notARack'])
    expect(readFileSync(path).equals(before)).toBe(true)
    expect(readdirSync(place.folder)).toEqual(['own.db'])
  })

  it('that cannot be opened is a problem, not an exception', () => {
    mkdirSync(path)
    expect(codesOf(openDatabase(path, { now: NOW }))).toEqual(['rackNotOpened'])
  })
})

describe('a damaged data file', () => {
  it.each([
    ['text', () => Buffer.from('this is no database, and never was one. '.repeat(200))],
    ['a file with its inner pages overwritten', () => readFileSync(path).fill(0xa5, 4096, 40_960)],
    ['a file cut short', () => readFileSync(path).subarray(0, 20_000)],
  ])('(%s) is moved aside byte for byte, and the user told where', async (_, damaged) => {
    await withTool()
    const bytes = damaged()
    writeFileSync(path, bytes)
    const opened = open()
    expect(opened.notices).toMatchObject([{ code: 'rackMovedAside' }])
    const aside = String(opened.notices[0]?.params.file)
    expect(readFileSync(aside).equals(bytes)).toBe(true)
    expect(await opened.db.selectFrom('tool').selectAll().execute()).toEqual([])
    await opened.close()
  })

  it('is told of through workshop.get', async () => {
    await withTool()
    writeFileSync(path, 'no database at all '.repeat(300))
    const bench = await openOwnBench(place.folder)
    expect((await bench.done('workshop.get', {})).notices).toMatchObject([{ code: 'rackMovedAside' }])
    await bench.workshop.close()
  })
})

describe('a migration', () => {
  it('keeps what was there and makes a checked copy first', async () => {
    await withTool()
    const opened = open(nextRelease)
    expect(await pragmaOf(opened, 'user_version')).toBe(NEWEST + 1)
    const rows = await sql<{ name: string; ballast: string }>`select name, ballast from tool`.execute(opened.db)
    expect(rows.rows).toEqual([{ name: 'kept', ballast: '' }])
    await opened.close()
    const copies = readdirSync(join(place.folder, 'backups')).filter((name) => name.includes(`schema${NEWEST}`))
    expect(copies).toEqual([`own-schema${NEWEST}-2026-03-04T05-06-07.000Z.db`])
    const copy = new BetterSqlite(join(place.folder, 'backups', copies[0] ?? ''), { readonly: true })
    expect(copy.prepare('SELECT name FROM tool').pluck().all()).toEqual(['kept'])
    expect(copy.pragma('user_version', { simple: true })).toBe(NEWEST)
    copy.close()
  })

  it('that fails changes nothing', async () => {
    await withTool()
    const failing: Migration = {
      version: NEWEST + 1,
      mark: '',
      up: (file) => {
        file.exec('DELETE FROM tool')
        throw new Error('no further')
      },
    }
    expect(codesOf(openDatabase(path, { now: NOW, migrations: [...migrations, failing] }))).toEqual(['rackNotOpened'])
    const opened = open()
    expect(await opened.db.selectFrom('tool').select('name').execute()).toEqual([{ name: 'kept' }])
    await opened.close()
  })

  it('to version 2 leaves the step of the leaves open where nobody noted it', async () => {
    await makeFile(migrations.slice(0, 1))
    const old = new BetterSqlite(path)
    old.exec(`INSERT INTO tool (id, version, code, name, kind, widthMm, thicknessMm, bevelSide, bevelAngleDeg, projectionMm,
        reliefMm, shavingDepthMm, dotCorner, steel, place, holder, note, searchText)
      VALUES ('t', 1, '01', 'kept', 'jack', 50, 3, 'down', 25, 130, 1, 0.4, 'left', '', '', '', '', 'kept')`)
    old.exec(`INSERT INTO benchLog (id, version, code, toolId, stage, reliefLeftMm, who, note, at)
      VALUES ('l', 1, 'L1', 't', 'asFound', 0.5, '', '', '2026-03-04T05:06:07.000Z')`)
    old.close()
    const opened = open()
    const lines = await opened.db.selectFrom('benchLog').select(['reliefLeftMm', 'leafStepMm']).execute()
    expect(lines).toEqual([{ reliefLeftMm: 0.5, leafStepMm: null }])
    await opened.close()
  })

  it('of a new file makes no copy', async () => {
    await makeFile()
    expect(existsSync(join(place.folder, 'backups'))).toBe(false)
  })
})
