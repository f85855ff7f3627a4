import { copyFileSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { migrate } from '../../main/database/migrate.ts'
import { migrations } from '../../main/database/migrations.ts'
import { failingAt } from '../support/faults.ts'
import { temporaryFolder } from './support.ts'

const TOOLS = 12
let place: ReturnType<typeof temporaryFolder>
let old: string
beforeEach(() => {
  place = temporaryFolder()
  old = join(place.folder, 'old.db')
  const file = new BetterSqlite(old)
  const before = migrations.filter(({ version }) => version < 5)
  migrate(file, before, null)
  const add =
    file.prepare(`INSERT INTO tool (id, version, code, name, kind, widthMm, thicknessMm, bevelSide, bevelAngleDeg,
      projectionMm, reliefMm, shavingDepthMm, dotCorner, steel, place, holder, note, searchText)
    VALUES (?, 1, ?, 'kept', 'jack', 50, 3, 'down', 25, 130, 1, 0.4, 'left', '', ?, ?, '', '')`)
  const log = file.prepare(`INSERT INTO benchLog (id, version, code, toolId, stage, who, note, at)
    VALUES (?, 1, ?, ?, 'asGround', '', '', '2020-03-01T08:00:00.000Z')`)
  for (let i = 1; i <= TOOLS; i++) {
    add.run(`t${i}`, `${i}`, `wall ${i % 3}`, i % 2 ? 'Nib' : '')
    log.run(`l${i}`, `L${i}`, `t${i}`)
  }
  file.close()
})
afterEach(() => place.remove())

/** Everything in a file before it is migrated, and whether it is sound. */
const contentsOf = (path: string): unknown => {
  const file = new BetterSqlite(path, { readonly: true })
  const rows = (table: string) => file.prepare(`SELECT * FROM ${table} ORDER BY 1`).all()
  const schema = file.prepare('SELECT type, name, sql FROM sqlite_schema ORDER BY type, name').all()
  const told = [file.pragma('integrity_check', { simple: true }), file.pragma('user_version', { simple: true })]
  const contents = { told, schema, tools: rows('tool'), log: rows('benchLog'), counters: rows('codeCounter') }
  file.close()
  return contents
}

const moved = (path: string): unknown => {
  const file = new BetterSqlite(path, { readonly: true })
  const count = (what: string) => file.prepare(`SELECT count(*) FROM ${what}`).pluck().get()
  const told = [file.pragma('integrity_check', { simple: true }), file.pragma('user_version', { simple: true })]
  const counts = ['tool WHERE placeId IS NOT NULL', 'benchLog', 'place', 'person', 'loan'].map(count)
  file.close()
  return [...told, ...counts]
}
const wholeAt = (version: number) => ['ok', version, TOOLS, TOOLS, 3, 1, TOOLS / 2]
const upTo = (last: number) => migrations.filter(({ version }) => version <= last)

/** Migrates a fresh copy of the old file under a fault. @returns whether it went through */
const attempt = (name: string, work: (file: BetterSqlite.Database) => void): { path: string; through: boolean } => {
  const path = join(place.folder, `${name}.db`)
  copyFileSync(old, path)
  const file = new BetterSqlite(path)
  file.pragma('foreign_keys = ON')
  try {
    work(file)
    return { path, through: true }
  } catch (error) {
    expect(error).toMatchObject({ code: 'SQLITE_FULL' })
    return { path, through: false }
  } finally {
    file.close()
  }
}

const expectUndoneThenDone = (path: string, version: number) => {
  expect(contentsOf(path)).toEqual(contentsOf(old))
  const again = new BetterSqlite(path)
  migrate(again, upTo(version), null)
  again.close()
  expect(moved(path)).toEqual(wholeAt(version))
}

/** Brings the old file to the version before. */
const bringTo = (version: number) => {
  const file = new BetterSqlite(old)
  migrate(file, upTo(version), null)
  file.close()
}

/** Versions that carry what a file of the one before holds. */
const carrying = [5, 6]

it.each(carrying)('version %i is fully done or fully undone whichever statement fails', (version) => {
  bringTo(version - 1)
  let asked = 0
  attempt('counted', (real) => {
    const failing = failingAt(real, 0)
    migrate(failing.file, upTo(version), null)
    asked = failing.statements()
  })
  expect(asked).toBeGreaterThan(0)
  for (let nth = 1; nth <= asked; nth++) {
    const { path, through } = attempt(`statement${nth}`, (real) =>
      migrate(failingAt(real, nth).file, upTo(version), null),
    )
    expect(through).toBe(false)
    expectUndoneThenDone(path, version)
  }
})

it('version 5, which needs new pages, is undone on a disk that is full after any number of them, and the copy made before holds all', () => {
  const version = 5
  bringTo(version - 1)
  let pages = 0
  for (let through = false; !through; pages++) {
    const tried = attempt(`pages${pages}`, (file) => {
      const held = Number(file.pragma('page_count', { simple: true }))
      file.pragma(`max_page_count = ${held + pages}`)
      migrate(file, upTo(version), { folder: join(place.folder, `b${pages}`), stem: 'rack', now: new Date(0) })
    })
    through = tried.through
    const [copy = ''] = readdirSync(join(place.folder, `b${pages}`))
    expect(contentsOf(join(place.folder, `b${pages}`, copy))).toEqual(contentsOf(old))
    if (through) expect(moved(tried.path)).toEqual(wholeAt(version))
    else expectUndoneThenDone(tried.path, version)
  }
  expect(pages).toBeGreaterThan(10)
})
