import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { sql } from 'kysely'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { folderProblem, lockFolder } from '../../main/database/lock.ts'
import { codesOf, openOwnBench, temporaryFolder, toolDraft, toolsOf } from './support.ts'

let place: ReturnType<typeof temporaryFolder>
beforeEach(() => {
  place = temporaryFolder()
})
afterEach(() => place.remove())

/** Starting a process takes a fraction of a second alone, and seconds on a machine that is busy. */
const PROCESS_TIMEOUT_MS = 20_000

const holder = `
  const { lockFolder } = await import(process.argv[1])
  process.stdout.write(lockFolder(process.argv[2]).ok ? 'held' : 'refused')
  setInterval(() => undefined, 1000)`

/** Another program that holds the folder until it is killed. */
const startHolder = async () => {
  const module = new URL('../../main/database/lock.ts', import.meta.url).href
  const child = spawn(process.execPath, ['--input-type=module', '-e', holder, module, place.folder])
  const [said] = (await once(child.stdout, 'data')) as [Buffer]
  return { child, said: said.toString() }
}

describe('the lock on a data folder', () => {
  it('is held by one at a time and can be given back', () => {
    const first = lockFolder(place.folder)
    expect(codesOf(lockFolder(place.folder))).toEqual(['folderInUse'])
    if (first.ok) first.value.release()
    const again = lockFolder(place.folder)
    expect(again.ok).toBe(true)
    if (again.ok) again.value.release()
  })

  it(
    'keeps another process out, and falls free when that process is killed',
    async () => {
      const { child, said } = await startHolder()
      expect(said).toBe('held')
      expect(codesOf(lockFolder(place.folder))).toEqual(['folderInUse'])
      child.kill('SIGKILL')
      await once(child, 'exit')
      const taken = lockFolder(place.folder)
      expect(taken.ok).toBe(true)
      if (taken.ok) taken.value.release()
    },
    PROCESS_TIMEOUT_MS,
  )

  it('says so when the folder cannot be used at all', () => {
    writeFileSync(join(place.folder, 'file'), '')
    expect(codesOf(lockFolder(join(place.folder, 'file', 'inside')))).toEqual(['folderIsFile'])
    expect(codesOf(lockFolder(join(place.folder, 'file')))).toEqual(['folderIsFile'])
  })

  it.each([
    ['EACCES', 'folderNotWritable'],
    ['EROFS', 'folderNotWritable'],
    ['SQLITE_CANTOPEN', 'folderNotWritable'],
    ['SQLITE_READONLY_DIRECTORY', 'folderNotWritable'],
    ['ENOSPC', 'folderNoRoom'],
    ['EIO', 'folderNotOpened'],
  ])('tells %s as %s', (code, told) => {
    expect(folderProblem(Object.assign(new Error('so it is'), { code }), '/data').code).toBe(told)
  })
})

it(
  'while another connection holds the data file a change waits, is then refused in words, and goes through once it lets go',
  async () => {
    const bench = await openOwnBench(place.folder)
    // The wait is the file's own; here it need not be long.
    await bench.workshop.desk.access.read((db) => sql`PRAGMA busy_timeout = 50`.execute(db))
    const other = new BetterSqlite(join(place.folder, 'own.db'))
    other.exec('BEGIN IMMEDIATE')
    expect(codesOf(await bench.call('tool.add', toolDraft))).toEqual(['dataBusy'])
    other.exec('ROLLBACK')
    other.close()
    await bench.done('tool.add', toolDraft)
    expect(await toolsOf(bench)).toHaveLength(1)
    await bench.workshop.close()
  },
  PROCESS_TIMEOUT_MS,
)
