import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { join } from 'node:path'
import { setTimeout } from 'node:timers/promises'
import BetterSqlite from 'better-sqlite3'
import { openOwnBench, temporaryFolder } from '../main/support.ts'
import { faultsWithin } from './ownAccount.ts'
import { seeded } from './seeded.ts'

/** Long enough for a few dozen changes, so that the moment falls anywhere in one (ms). */
const LONGEST_MS = 120

/** Lets the writer write for a moment of this seed, then kills it. @returns the ids of the changes it was told are kept */
const acknowledged = async (folder: string, seed: number): Promise<readonly number[]> => {
  const child = spawn(process.execPath, [join(import.meta.dirname, 'killWriter.ts'), folder, String(seed)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let said = ''
  child.stdout.on('data', (part) => {
    said += String(part)
  })
  await once(child.stdout, 'data')
  await setTimeout(seeded(seed)() * LONGEST_MS)
  child.kill('SIGKILL')
  await once(child, 'close')
  // The last line may be cut.
  const lines = said.split('\n').slice(0, -1)
  return lines.flatMap((line) => (JSON.parse(line) as { changeId?: number }).changeId ?? [])
}

const lost = (file: BetterSqlite.Database, ids: readonly number[]): readonly string[] => {
  const there = file.prepare('SELECT 1 FROM change WHERE id = ?').pluck()
  return ids.filter((id) => there.get(id) === undefined).map((id) => `the acknowledged change ${id} is lost`)
}

/** @returns what is wrong with a rack whose writer was killed at the moment of this seed, or null */
export const faultAfterKill = async (seed: number, folder: string): Promise<string | null> => {
  const ids = await acknowledged(folder, seed)
  const bench = await openOwnBench(folder)
  const { notices = [] } = await bench.done('workshop.get', {})
  await bench.workshop.close()
  const file = new BetterSqlite(join(folder, 'own.db'))
  const faults = [...notices.map(({ code }) => `notice ${code}`), ...lost(file, ids), ...faultsWithin(file)]
  file.close()
  return faults.length === 0 ? null : faults.join('; ')
}

/** The same in a folder of its own, for a count of many. */
export const faultAfterOneKill = async (seed: number): Promise<string | null> => {
  const place = temporaryFolder()
  try {
    return await faultAfterKill(seed, place.folder)
  } catch (error) {
    return error instanceof Error ? error.message : String(error)
  } finally {
    place.remove()
  }
}
