import { copyFileSync, mkdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { lookInside } from '../../main/backup/lookInside.ts'
import { migrate } from '../../main/database/migrate.ts'
import { migrations } from '../../main/database/migrations.ts'
import { openDatabase } from '../../main/database/open.ts'
import { schemaDigest } from '../../main/database/planted.ts'
import { codesOf, temporaryFolder } from './support.ts'

const place = temporaryFolder()
afterAll(place.remove)

const NOW = new Date('2026-01-05T08:00:00Z')
const upTo = (version: number) => migrations.filter((each) => each.version <= version)
const at = (name: string): string => join(place.folder, name)

/** A sound data file of a version. */
const fileOf = (version: number): string => {
  const path = at(`version-${version}.db`)
  const file = new BetterSqlite(path)
  migrate(file, upTo(version), null)
  file.close()
  return path
}

describe('the digest of each released schema', () => {
  it.each(migrations.map(({ version, schema }) => [version, schema] as const))(
    'is that of version %i',
    (version, schema) => {
      const file = new BetterSqlite(':memory:')
      migrate(file, upTo(version), null)
      expect(schema, 'A new migration gets the digest of the schema it leaves.').toBe(schemaDigest(file))
      file.close()
    },
  )
})

/** What somebody may have put into a file before handing it on. */
const plants: readonly (readonly [string, string])[] = [
  ['a trigger of its own', 'CREATE TRIGGER x AFTER UPDATE ON settings BEGIN DELETE FROM tool; END'],
  ['a view', 'CREATE VIEW x AS SELECT * FROM person'],
  ['a table', 'CREATE TABLE x (a TEXT)'],
  ['an index that works something out', 'CREATE INDEX x ON tool (upper(name))'],
  ['a generated column', "ALTER TABLE tool ADD COLUMN x TEXT GENERATED ALWAYS AS (name || 'x')"],
  ['one of our triggers gone', 'DROP TRIGGER learnerGone'],
  [
    'one of our triggers changed',
    'DROP TRIGGER learnerGone; CREATE TRIGGER learnerGone AFTER UPDATE ON person BEGIN SELECT 1; END',
  ],
  ['a table in place of the full-text index', 'DROP TABLE toolSearch; CREATE TABLE toolSearch (words TEXT)'],
]

describe('a data file with our mark', () => {
  let newest: string
  beforeAll(() => {
    newest = fileOf(migrations.length)
  })

  it.each(plants)('that holds %s is left as it is, neither opened nor gone back to', (_, sql) => {
    mkdirSync(at('planted'), { recursive: true })
    const path = at('planted/own.db')
    copyFileSync(newest, path)
    const file = new BetterSqlite(path)
    file.exec(sql)
    file.close()
    const bytes = readFileSync(path)
    expect(codesOf(openDatabase(path, { now: NOW }))).toEqual(['rackPlanted'])
    expect(codesOf(lookInside(path))).toEqual(['rackPlanted'])
    expect(readFileSync(path).equals(bytes)).toBe(true)
  })

  it.each(migrations.map(({ version }) => version))(
    'of version %i is known for ours and brought up to date',
    async (version) => {
      const opened = openDatabase(fileOf(version), { now: NOW })
      expect(opened.ok && opened.value.schemaVersion).toBe(migrations.length)
      if (opened.ok) await opened.value.close()
    },
  )

  it('with statistics of SQLite in it is still ours', async () => {
    const path = at('analysed.db')
    copyFileSync(newest, path)
    const file = new BetterSqlite(path)
    file.exec('ANALYZE')
    file.close()
    const opened = openDatabase(path, { now: NOW })
    expect(opened.ok).toBe(true)
    if (opened.ok) await opened.value.close()
  })
})
