import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { outcomeOfFlip } from '../support/flipFault.ts'
import { faultAfterKill } from '../support/killFault.ts'
import { faultsWithin } from '../support/ownAccount.ts'
import { openOwnBench, temporaryFolder, toolDraft } from './support.ts'

let place: ReturnType<typeof temporaryFolder>
beforeEach(() => {
  place = temporaryFolder()
})
afterEach(() => place.remove())

/** Each a start of a process, half a second alone; the long count has 500. */
const KILLS = 5
/** Several times what they take alone. */
const CRASH_TIMEOUT_MS = 60_000

describe('a program killed while it writes', () => {
  it(
    'loses no change that it acknowledged, and leaves none half done',
    async () => {
      const faults: (string | null)[] = []
      for (let seed = 1; seed <= KILLS; seed += 1) faults.push(await faultAfterKill(seed, place.folder))
      expect(faults).toEqual(faults.map(() => null))
    },
    CRASH_TIMEOUT_MS,
  )
})

describe('what would be half a change', () => {
  const planted: readonly (readonly [string, string])[] = [
    ['with another version', 'UPDATE tool SET version = version + 1'],
    ['stands or not', "UPDATE tool SET deletedAt = '2020-01-01T00:00:00.000Z'"],
    ['without its record', "UPDATE change SET entityId = 'nobody' WHERE noun = 'tool'"],
    ['a group that a crash cut', 'UPDATE change SET groupId = id'],
    ['a state that the log', "UPDATE toolState SET honings = 7, dueKey = '3'"],
    ['a due day', "UPDATE toolState SET dueKey = '2'"],
    ['words that the tool', "UPDATE toolWords SET words = 'others'"],
    ['a tool without state', 'DELETE FROM toolState'],
  ]
  it.each(planted)('is found: %s', async (name, statement) => {
    const bench = await openOwnBench(place.folder)
    await bench.done('tool.add', toolDraft)
    await bench.workshop.close()
    const open = () => new BetterSqlite(join(place.folder, 'own.db'))
    const before = open()
    expect(faultsWithin(before)).toEqual([])
    before.unsafeMode()
    before.pragma('foreign_keys = OFF')
    before.exec(statement)
    before.close()
    const after = open()
    expect(faultsWithin(after).join('\n')).toContain(name)
    after.close()
  })
})

/** Seeds whose bits once fell on a line of the history, and some of the rest; the long count has 400. */
const FLIPS = [58, 125, 134, 261, 1, 2, 3, 4, 5, 6]

it('bits turned over are met by a check, a word or a copy, never by a window that does not open', async () => {
  const faults: (string | null)[] = []
  for (const seed of FLIPS) faults.push((await outcomeOfFlip(seed)).fault)
  expect(faults).toEqual(FLIPS.map(() => null))
})

/** Lets an index contradict its table, as bits turned over in it do: it sleeps through a change. */
const spoilIndex = (path: string, index: string, change: string) => {
  const open = () => {
    const file = new BetterSqlite(path)
    file.unsafeMode()
    file.pragma('writable_schema = ON')
    return file
  }
  const first = open()
  const { type, name, tbl_name, rootpage, sql } = first
    .prepare('SELECT * FROM sqlite_schema WHERE name = ?')
    .get(index) as Record<string, string | number>
  first.prepare('DELETE FROM sqlite_schema WHERE name = ?').run(index)
  first.close()
  const second = open()
  second.exec(change)
  second.prepare('INSERT INTO sqlite_schema VALUES (?, ?, ?, ?, ?)').run(type, name, tbl_name, rootpage, sql)
  second.close()
}

it('an index that contradicts its table, which the quick check passes over, is found at the start of a file of usual size', async () => {
  const bench = await openOwnBench(place.folder)
  await bench.done('tool.add', toolDraft)
  await bench.workshop.close()
  const path = join(place.folder, 'own.db')
  spoilIndex(path, 'toolByName', "UPDATE tool SET name = 'another'")
  const file = new BetterSqlite(path)
  expect(file.pragma('quick_check', { simple: true })).toBe('ok')
  file.close()
  const again = await openOwnBench(place.folder)
  expect(again.workshop.notices().map(({ code }) => code)).toEqual(['rackMovedAside'])
  await again.workshop.close()
})
