import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import BetterSqlite from 'better-sqlite3'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { openOwnBench, temporaryFolder } from './support.ts'

let place: ReturnType<typeof temporaryFolder>
beforeEach(() => {
  place = temporaryFolder()
})
afterEach(() => place.remove())

/** Adds and edits tools without end. */
const writer = `
  const { openOwnBench, toolDraft } = await import(process.argv[1])
  const bench = await openOwnBench(process.argv[2], {}, () => crypto.randomUUID())
  for (;;) {
    const { value } = await bench.done('tool.add', toolDraft)
    process.stdout.write('.')
    await bench.done('tool.edit', { id: value.id, version: 1, draft: { ...toolDraft, widthMm: 61 } })
  }`

/** Kills the writer some moments after its second tool, however slow the machine is just now. */
const writeAndKill = async (afterMs: number) => {
  const support = new URL('./support.ts', import.meta.url).href
  const child = spawn(process.execPath, ['--input-type=module', '-e', writer, support, place.folder])
  let added = 0
  while (added < 2) added += String(await once(child.stdout, 'data')).length
  await setTimeout(afterMs)
  child.kill('SIGKILL')
  await once(child, 'exit')
}

/** Three starts of a process: a second and a half alone, several times that beside other tests. */
const CRASH_TIMEOUT_MS = 30_000

describe('a program killed while it writes', () => {
  it(
    'leaves every change whole or not begun',
    async () => {
      for (const afterMs of [5, 31, 67]) await writeAndKill(afterMs)
      const bench = await openOwnBench(place.folder)
      expect((await bench.done('workshop.get', {})).notices).toEqual([])
      await bench.workshop.close()
      const file = new BetterSqlite(join(place.folder, 'own.db'))
      expect(file.pragma('integrity_check', { simple: true })).toBe('ok')
      const count = (query: string) => file.prepare(query).pluck().get()
      expect(count('SELECT count(*) FROM tool')).toBeGreaterThan(3)
      expect(count("SELECT last FROM codeCounter WHERE noun = 'tool'")).toBe(count('SELECT count(*) FROM tool'))
      expect(count('SELECT count(*) FROM change')).toBe(count('SELECT sum(version) FROM tool'))
      file.close()
    },
    CRASH_TIMEOUT_MS,
  )
})
