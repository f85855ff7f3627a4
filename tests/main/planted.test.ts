import { mkdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { lookInside } from '../../main/backup/lookInside.ts'
import { migrate } from '../../main/database/migrate.ts'
import { migrations } from '../../main/database/migrations.ts'
import { openDatabase } from '../../main/database/open.ts'
import { codesOf, openOwnBench, temporaryFolder, toolDraft, toolsOf } from './support.ts'

const NOW = new Date('2026-03-04T05:06:07.000Z')

let place: ReturnType<typeof temporaryFolder>
let path: string
beforeEach(() => {
  place = temporaryFolder()
  path = join(place.folder, 'own.db')
})
afterEach(() => place.remove())

const make = (file: string, version: number, sql: string): void => {
  const db = new BetterSqlite(file)
  db.unsafeMode(true)
  migrate(
    db,
    migrations.filter((each) => each.version <= version),
    null,
  )
  db.exec(sql)
  db.close()
}

/** Changes what the schema says without SQLite looking at it, as whoever writes a file by hand can. */
const rewritten = (name: string, from: string, to: string): string =>
  `PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = replace(sql, '${from}', '${to}') WHERE name = '${name}'`

const eraser = 'AFTER UPDATE ON tool BEGIN DELETE FROM benchLog; END'

const planted: readonly (readonly [string, string])[] = [
  ['a trigger', `CREATE TRIGGER eraser ${eraser}`],
  [
    'a trigger named as SQLite names its own',
    `PRAGMA writable_schema = ON;
    INSERT INTO sqlite_schema VALUES ('trigger', 'sqlite_x', 'tool', 0, 'CREATE TRIGGER sqlite_x ${eraser}')`,
  ],
  [
    'a trigger of ours, changed',
    `DROP TRIGGER benchLogNoted;
    CREATE TRIGGER benchLogNoted AFTER INSERT ON benchLog BEGIN DELETE FROM tool; END`,
  ],
  ['a trigger of ours, gone', 'DROP TRIGGER toolAdded'],
  ['a view', 'CREATE VIEW more AS SELECT * FROM tool'],
  ['a view in the place of a table', 'DROP TABLE kindName; CREATE VIEW kindName AS SELECT 1 AS kind, 2 AS name'],
  ['a view of ours, changed', "DROP VIEW toolText; CREATE VIEW toolText AS SELECT id AS toolId, '' AS words FROM tool"],
  ['a table', 'CREATE TABLE more (words TEXT)'],
  ['a virtual table', 'CREATE VIRTUAL TABLE more USING fts5 (words)'],
  ['a generated column', 'ALTER TABLE tool ADD COLUMN more TEXT GENERATED ALWAYS AS (lower(name)) VIRTUAL'],
  ['a column', "ALTER TABLE tool ADD COLUMN more TEXT DEFAULT 'x'"],
  ['an index on what is worked out', 'CREATE INDEX more ON tool (lower(name))'],
  ['a check that is another', rewritten('tool', 'version >= 1', 'version >= 0')],
  ['a default that is another', rewritten('settings', "DEFAULT ''on''", "DEFAULT ''off''")],
  ['a key of a table without its reference', rewritten('job', 'REFERENCES tool (id)', '')],
]

describe.each(planted)('a file of ours with %s planted in it', (_, sql) => {
  it('is refused and left as it is', () => {
    make(path, migrations.length, sql)
    const before = readFileSync(path)
    expect(codesOf(openDatabase(path, { now: NOW }))).toEqual(['rackPlanted'])
    expect(codesOf(lookInside(path))).toEqual(['rackPlanted'])
    expect(readFileSync(path).equals(before)).toBe(true)
  })
})

it.each(migrations)(
  'a sound file of version $version is let in; with a trigger of its own it is not',
  ({ version }) => {
    make(path, version, '')
    const opened = openDatabase(path, { now: NOW })
    expect(codesOf(opened)).toEqual([])
    if (opened.ok) void opened.value.close()
    const other = join(place.folder, 'other.db')
    make(other, version, `CREATE TRIGGER eraser ${eraser}`)
    expect(codesOf(openDatabase(other, { now: NOW }))).toEqual(['rackPlanted'])
  },
)

it('what SQLite adds where somebody had it count is no reason to refuse', async () => {
  const bench = await openOwnBench(place.folder)
  await bench.done('tool.add', toolDraft)
  await bench.workshop.close()
  const file = new BetterSqlite(path)
  file.exec('ANALYZE')
  file.close()
  expect(codesOf(lookInside(path))).toEqual([])
})

it('nobody goes back to a planted copy or opens a planted rack, and the one that is open stays', async () => {
  const bench = await openOwnBench(place.folder)
  await bench.done('tool.add', { ...toolDraft, name: 'kept' })
  const name = 'own-2026-01-01T08-00-00.000Z.db'
  mkdirSync(join(place.folder, 'backups'), { recursive: true })
  make(join(place.folder, 'backups', name), migrations.length, `CREATE TRIGGER eraser ${eraser}`)
  make(join(place.folder, 'demo.db'), migrations.length, `CREATE TRIGGER eraser ${eraser}`)
  expect(codesOf(await bench.call('copy.look', { name }))).toEqual(['rackPlanted'])
  expect(codesOf(await bench.call('copy.restore', { name }))).toEqual(['rackPlanted'])
  expect(codesOf(await bench.workshop.goBack(join(place.folder, 'backups', name)))).toEqual([
    'goingBackUndone',
    'rackPlanted',
  ])
  expect(codesOf(await bench.call('workshop.open', { rack: 'demo' }))).toEqual(['rackPlanted'])
  expect((await toolsOf(bench)).map((tool) => tool.name)).toEqual(['kept'])
  await bench.workshop.close()
})
