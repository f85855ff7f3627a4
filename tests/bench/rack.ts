import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import type { CallInput } from '../../main/contract/calls.ts'
import { openFileBench } from '../main/inOutSupport.ts'
import { temporaryFolder } from '../main/support.ts'
import { about, inMs, type Row } from './clock.ts'

/** What the tools are called, so that typed words find many, some and few. */
const NAMES = [
  'Smoothing iron',
  'Jack iron',
  'Block iron',
  'Jointer iron',
  'Paring chisel',
  'Mortise chisel',
  'Scrub iron',
]
const LINES_EACH = 3
const ASKED = 200
/** Tools changed at once. */
const MANY = 10_000

const id = (family: number, number: number): string =>
  `00000000-0000-4${String(family).padStart(3, '0')}-8000-${String(number).padStart(12, '0')}`

/** Tools with three log lines each, written straight into the file, whose triggers do the rest. */
const fill = (path: string, count: number): void => {
  const file = new BetterSqlite(path)
  file.pragma('foreign_keys = ON')
  const tool =
    file.prepare(`INSERT INTO tool (id, version, code, name, kind, widthMm, thicknessMm, seatAngleDeg, bevelSide,
      bevelAngleDeg, projectionMm, reliefMm, shavingDepthMm, dotCorner, steel, note, dueDays, dueHonings)
    VALUES (?, 1, ?, ?, 'jack', ?, 3, 45, 'down', 25, 120, ?, 0.1, 'left', 'carbon', ?, 90, 5)`)
  const line =
    file.prepare(`INSERT INTO benchLog (id, version, code, toolId, stage, reliefLeftMm, reliefRightMm, who, note, at)
    VALUES (?, 1, ?, ?, ?, 0.1, 0.1, '', '', ?)`)
  file.transaction(() => {
    for (let n = 1; n <= count; n += 1) {
      const name = `${NAMES[n % NAMES.length]} ${(n * 7919) % 9973}`
      tool.run(id(1, n), String(n).padStart(2, '0'), name, 20 + (n % 60), n % 3 === 0 ? 0 : 0.2, `shelf ${n % 997}`)
      for (let k = 0; k < LINES_EACH; k += 1) {
        const at = `2025-0${1 + (n % 9)}-1${k}T08:00:00.000Z`
        line.run(id(2, n * LINES_EACH + k), `L${n * LINES_EACH + k}`, id(1, n), k === 1 ? 'asGround' : 'asFound', at)
      }
    }
    file.prepare("INSERT INTO codeCounter (noun, last) VALUES ('tool', ?)").run(count)
  })()
  file.close()
}

/** Words as they are typed, a letter more each time. */
const typed = (): readonly string[] =>
  Array.from({ length: ASKED }, (_, n) => {
    const whole = `${(NAMES[n % NAMES.length] ?? '').toLowerCase()} ${(n * 7919) % 9973}`
    return whole.slice(0, 1 + ((n * 5) % whole.length))
  })

const quantile = (times: readonly number[], share: number): number =>
  [...times].sort((a, b) => a - b)[Math.min(times.length - 1, Math.floor(times.length * share))] as number

/** A workshop of this many tools: opened, listed, searched letter by letter, sorted, narrowed, copied. */
export const rackRows = async (count: number): Promise<readonly Row[]> => {
  const folder = temporaryFolder()
  await (await openFileBench(folder.folder)).workshop.close()
  fill(join(folder.folder, 'own.db'), count)
  const startedMs = performance.now()
  const bench = await openFileBench(folder.folder)
  const openedMs = performance.now() - startedMs
  const timed = async (asked: CallInput<'tool.find'>): Promise<number> => {
    const before = performance.now()
    await bench.done('tool.find', { limit: 100, ...asked })
    return performance.now() - before
  }
  const listMs = await timed({})
  const farMs = await timed({ offset: count - 100 })
  const sortMs = await timed({ sort: 'name' })
  const dueMs = await timed({ filter: { due: 'any' }, sort: 'due' })
  const searches: number[] = []
  for (const search of typed()) searches.push(await timed({ search }))
  const ids: string[] = []
  for (let offset = 0; offset < MANY; offset += 500)
    ids.push(...(await bench.done('tool.find', { offset, limit: 500 })).tools.map((tool) => tool.id))
  const changing = performance.now()
  await bench.done('tools.edit', { which: { ids }, set: { steel: 'blue', dueDays: 30 } })
  const manyMs = performance.now() - changing
  const undoing = performance.now()
  await bench.done('change.undo', {})
  const undoMs = performance.now() - undoing
  const copying = performance.now()
  await bench.done('copy.make', {})
  const copyMs = performance.now() - copying
  await bench.workshop.close()
  folder.remove()
  const [p50, p95] = [quantile(searches, 0.5), quantile(searches, 0.95)]
  const many = `${count.toLocaleString('en')} tools`
  const against = (ms: number) => `${about(ms / p50)} times a search`
  return [
    {
      what: `rack of ${many} and three log lines each opened, with its check`,
      took: inMs(openedMs),
      against: against(openedMs),
    },
    { what: `its first page`, took: inMs(listMs), against: against(listMs) },
    { what: `its last page`, took: inMs(farMs), against: against(farMs) },
    { what: `its first page by name`, took: inMs(sortMs), against: against(sortMs) },
    { what: `its due list`, took: inMs(dueMs), against: against(dueMs) },
    { what: `${ASKED} searches letter by letter, in the middle`, took: inMs(p50), against: '1' },
    { what: `nineteen of twenty of them under`, took: inMs(p95), against: against(p95) },
    {
      what: `${MANY.toLocaleString('en')} tools given another steel and day, as one`,
      took: inMs(manyMs),
      against: against(manyMs),
    },
    { what: `that taken back`, took: inMs(undoMs), against: against(undoMs) },
    { what: `a copy of the file, checked`, took: inMs(copyMs), against: against(copyMs) },
  ]
}
