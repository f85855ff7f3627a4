import BetterSqlite from 'better-sqlite3'
import { afterEach, expect, it } from 'vitest'
import { type FileBench, openFileBench } from './inOutSupport.ts'
import { documentOf } from './randomRack.ts'
import { codesOf, stationDraft, temporaryFolder, toolDraft, toolsOf } from './support.ts'

const place = temporaryFolder()
afterEach(() => place.remove())

/** Everything that a file holds, table by table. */
const contentsOf = (path: string): unknown => {
  const file = new BetterSqlite(path, { readonly: true })
  const tables = file
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite_%'")
    .pluck()
    .all()
  const rows = tables.map((name) => [name, file.prepare(`SELECT * FROM "${name}"`).all()])
  const check = file.pragma('integrity_check', { simple: true })
  file.close()
  return { check, rows: Object.fromEntries(rows) }
}

/** Lets so many statements of a write run, and the next one not. */
const failAt = (bench: FileBench, nth: number) => {
  const { access } = bench.workshop.desk
  let statements = 0
  const write: typeof access.write = (work) =>
    access.write((db) =>
      work(
        new Proxy(db, {
          get: (target, key) => {
            const value = Reflect.get(target, key, target) as unknown
            const isStatement = ['executeQuery', 'insertInto', 'updateTable', 'selectFrom'].includes(String(key))
            if (typeof value !== 'function') return value
            if (!isStatement) return value.bind(target)
            return (...given: unknown[]) => {
              statements += 1
              if (statements === nth) throw new BetterSqlite.SqliteError('no room', 'SQLITE_FULL')
              return (value as (...args: unknown[]) => unknown).apply(target, given)
            }
          },
        }),
      ),
    )
  Object.assign(bench.workshop.desk, { access: { ...access, write } })
  return { end: () => void Object.assign(bench.workshop.desk, { access }), statements: () => statements }
}

const id = (end: number) => `eeeeeeee-0000-4000-8000-00000000000${end}`
/** Something new, something changed, something from the scrap box, of several nouns. */
const file = documentOf({
  purpose: [{ id: id(1), name: 'curly ash' }],
  place: [
    { id: id(2), name: 'drawer', parentId: id(3) },
    { id: id(3), name: 'cabinet' },
  ],
  station: [{ ...stationDraft, code: 'S1', wheelDiameterMm: 240 }],
  tool: [
    { ...toolDraft, code: '01', name: 'changed', placeId: id(2) },
    { ...toolDraft, code: '02', name: 'back' },
    { ...toolDraft, id: id(4), name: 'new', curves: [{ purposeId: id(1), reliefMm: 1, shavingDepthMm: 0.1 }] },
  ],
})

it('an import whose nth statement fails leaves everything as it was, for every n', { timeout: 60_000 }, async () => {
  const bench = await openFileBench(place.folder)
  await bench.done('station.add', stationDraft)
  await bench.done('tool.add', toolDraft)
  const { value: two } = await bench.done('tool.add', toolDraft)
  await bench.done('tool.remove', { id: two.id, version: 1 })
  const path = bench.workshop.path()
  const before = contentsOf(path)
  const blobId = bench.put(file)
  let failures = 0
  for (let nth = 1; ; nth += 1) {
    const fault = failAt(bench, nth)
    const brought = await bench.call('inOut.bring', { blobId })
    fault.end()
    if (brought.ok) break
    failures += 1
    expect(codesOf(brought)).toEqual(['diskFull'])
    expect(contentsOf(path)).toEqual(before)
  }
  expect(failures).toBeGreaterThan(30)
  const after = await toolsOf(bench)
  expect(after.map(({ code, name, place: at }) => [code, name, at])).toEqual([
    ['01', 'changed', 'cabinet / drawer'],
    ['02', 'back', ''],
    ['03', 'new', ''],
  ])
  await bench.workshop.close()
})
