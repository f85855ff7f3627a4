import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import BetterSqlite from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { migrate } from '../../main/database/migrate.ts'
import { migrations } from '../../main/database/migrations.ts'
import { schemaMark } from '../../main/database/stranger.ts'

const folder = fileURLToPath(new URL('./schema/', import.meta.url))
const pathOf = (version: number) => `${folder}version-${version}.sql`

/** Every statement of the schema as SQLite keeps it, spaces evened out, in the order of names. */
const schemaAt = (version: number): string => {
  const file = new BetterSqlite(':memory:')
  migrate(
    file,
    migrations.filter((one) => one.version <= version),
    null,
  )
  const rows = file.prepare("SELECT sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' ORDER BY name").pluck().all()
  return rows.map((sql) => `${String(sql).replace(/\s+/g, ' ')};\n`).join('')
}

const columnsAt = (version: number): string[] => {
  const file = new BetterSqlite(':memory:')
  migrate(
    file,
    migrations.filter((one) => one.version <= version),
    null,
  )
  const rows = file
    .prepare("SELECT t.name || '.' || c.name FROM sqlite_schema t, pragma_table_info(t.name) c WHERE t.type = 'table'")
    .pluck()
    .all()
  return rows.map(String)
}

describe('the schema', () => {
  it.each(migrations.map(({ version }) => version))('of version %i is as it was released', (version) => {
    if (!existsSync(pathOf(version)) && process.env.NEW_SCHEMA === String(version))
      writeFileSync(pathOf(version), schemaAt(version))
    const help = `Version ${version} of the schema differs from tests/main/schema/version-${version}.sql. Workshops already hold files of
that version, so do not edit a released migration or its snapshot: put the change into a new migration at the end of
main/database/migrations.ts and run NEW_SCHEMA=${version + 1} npx vitest run --config tests/vitest.config.ts schemaSnapshot`
    const released = existsSync(pathOf(version)) ? readFileSync(pathOf(version), 'utf8') : 'no snapshot yet'
    expect(schemaAt(version), help).toBe(released)
  })

  it.each(migrations)('of version $version has the mark by which its files are known', ({ version, mark }) => {
    const file = new BetterSqlite(':memory:')
    migrate(
      file,
      migrations.filter((one) => one.version <= version),
      null,
    )
    // Of a new migration: write this mark into its line. Of a released one: workshops' files bear the old one, so undo the change.
    expect(schemaMark(file)).toBe(mark)
  })

  it('has no snapshot without its migration', () => {
    expect(readdirSync(folder).sort()).toEqual(migrations.map(({ version }) => `version-${version}.sql`).sort())
  })

  /** Columns that became something else; the migration that ended them carries what they held. */
  const givenUp = ['tool.place', 'tool.holder', 'tool.searchText']

  it('only ever gains columns, but for those that are carried over', () => {
    const help = 'A column of an older version is gone. Older changes in the log still name it: keep it, unused.'
    for (const { version } of migrations.slice(1))
      expect(columnsAt(version), help).toEqual(
        expect.arrayContaining(columnsAt(version - 1).filter((column) => version !== 5 || !givenUp.includes(column))),
      )
  })

  it('counts its versions from 1 without a gap, and is strict throughout', () => {
    expect(migrations.map(({ version }) => version)).toEqual(migrations.map((_, i) => i + 1))
    const tables = schemaAt(migrations.length)
      .split('\n')
      .filter((sql) => sql.startsWith('CREATE TABLE') && !sql.includes("'toolSearch_"))
    expect(tables.length).toBeGreaterThan(7)
    for (const sql of tables) expect(sql).toMatch(/\) STRICT;$/)
  })
})
