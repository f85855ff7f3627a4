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
const KILLS = 10
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

/** Seeds whose bits fell on an index, which the quick check passes over. */
const FLIPPED_INDEXES = [13, 17, 29]

it('an index that contradicts its table is found at the start of a file of usual size', async () => {
  for (const seed of FLIPPED_INDEXES) expect((await outcomeOfFlip(seed)).end).toContain('put aside')
})
