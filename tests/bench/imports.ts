import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { openFileBench } from '../main/inOutSupport.ts'
import { temporaryFolder } from '../main/support.ts'
import { about, inMs, type Row } from './clock.ts'

const HEAD =
  'code,name,kind,widthMm,thicknessMm,seatAngleDeg,bevelSide,bevelAngleDeg,projectionMm,reliefMm,shavingDepthMm,steel,note'

interface Tool {
  readonly name: string
  readonly width: number
  readonly note: string
}

const toolsOf = (count: number): readonly Tool[] =>
  Array.from({ length: count }, (_, i) => ({
    name: `Iron ${i}, no. ${(i * 7919) % 1000}`,
    width: 40 + (i % 30),
    note: `kept dry, drawer ${i % 97}`,
  }))

const tableOf = (tools: readonly Tool[]): string =>
  [
    HEAD,
    ...tools.map(
      ({ name, width, note }, i) => `${i + 1},"${name}",try,${width},3.2,45,down,25,130,0.1,0.05,O1 steel,"${note}"`,
    ),
  ].join('\r\n')

/** What is the least that any program does: rows into a bare table with three indexes and a full-text index, one statement each. */
const bareMs = (folder: string, tools: readonly Tool[]): number => {
  const file = new BetterSqlite(join(folder, 'bare.db'))
  file.pragma('journal_mode = WAL')
  file.exec(`CREATE TABLE tool (id INTEGER PRIMARY KEY, code TEXT UNIQUE, name TEXT, width REAL, note TEXT);
    CREATE INDEX byName ON tool (name); CREATE INDEX byWidth ON tool (width);
    CREATE VIRTUAL TABLE words USING fts5 (name, note, content = 'tool', content_rowid = 'id');
    CREATE TRIGGER added AFTER INSERT ON tool BEGIN
      INSERT INTO words (rowid, name, note) VALUES (NEW.id, NEW.name, NEW.note); END;`)
  const add = file.prepare('INSERT INTO tool (code, name, width, note) VALUES (?, ?, ?, ?)')
  const startedMs = performance.now()
  file.transaction(() => {
    tools.forEach(({ name, width, note }, i) => {
      add.run(String(i), name, width, note)
    })
  })()
  const tookMs = performance.now() - startedMs
  file.close()
  return tookMs
}

/** Bringing a table of tools in, whole: read, judged, a copy made before, written with its undo and the search index. */
export const importRows = async (count: number): Promise<readonly Row[]> => {
  const tools = toolsOf(count)
  const place = temporaryFolder()
  const bench = await openFileBench(place.folder)
  const startedMs = performance.now()
  await bench.bring(tableOf(tools))
  const tookMs = performance.now() - startedMs
  const bare = bareMs(place.folder, tools)
  await bench.workshop.close()
  place.remove()
  const what = `table of ${count.toLocaleString('en')} tools brought in, with copy, undo and search`
  const took = `${inMs(tookMs)}, ${Math.round((count / tookMs) * 1000).toLocaleString('en')} rows/s`
  return [{ what, took, against: `${about(tookMs / bare)} times bare rows with three indexes and full text` }]
}
