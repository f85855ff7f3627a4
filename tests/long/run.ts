import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { z } from 'zod'
import { build, isBuildStale } from '../../main/start/build.ts'
import { outcomeOfCopyFault } from '../support/copyFault.ts'
import { faultWithDamagedJob } from '../support/damagedJob.ts'
import { outcomeOfFlip } from '../support/flipFault.ts'
import { faultWithRandomJob } from '../support/grindAtSeed.ts'
import { faultAfterOneKill } from '../support/killFault.ts'
import { faultOfLongBrowser } from '../support/longBrowser.ts'
import { faultOfBuildingTwice, faultOfPacking } from '../support/packFault.ts'
import { faultWithRandomRack } from '../support/randomRackFault.ts'
import { faultOfScan } from '../support/scanFault.ts'
import { endInputs, outcomeOfInput } from '../support/schemaFault.ts'
import type { LongCount } from './count.ts'
import { grindFuzz, openAndCloseGrind } from './grindInBrowser.ts'
import { soak } from './soak.ts'

/**
 * `npm run test:long`: the counts too long for `npm test`. What was done is noted every few seconds with its commit, so
 * that a run that was stopped goes on where it was; another commit begins anew. Names after `--` run those counts alone.
 */
const counts: readonly LongCount[] = [
  { name: 'damagedJobs', count: 20_000, attempt: faultWithDamagedJob },
  { name: 'randomGrinds', count: 10_000, attempt: faultWithRandomJob },
  { name: 'racks', count: 500, attempt: faultWithRandomRack },
  { name: 'kills', count: 500, attempt: faultAfterOneKill },
  { name: 'copyFaults', count: 1_000, attempt: outcomeOfCopyFault },
  { name: 'flips', count: 400, attempt: outcomeOfFlip },
  { name: 'schemaFuzz', count: 100_000, attempt: outcomeOfInput, end: endInputs },
  { name: 'longBrowser', count: 1, attempt: faultOfLongBrowser },
  { name: 'packing', count: 1, attempt: faultOfPacking },
  { name: 'scan', count: 1, attempt: faultOfScan },
  { name: 'buildingTwice', count: 1, attempt: faultOfBuildingTwice },
  grindFuzz,
  openAndCloseGrind,
  soak,
]

const root = join(import.meta.dirname, '..', '..')
const folder = join(root, '.cache', 'long')
/** Little enough to lose, and seldom enough not to slow the count down. */
const NOTE_EVERY_MS = 5_000

const noteSchema = z.object({
  commit: z.string(),
  date: z.string(),
  done: z.int(),
  faults: z.array(z.string()),
  ends: z.record(z.string(), z.int()),
})
type Note = z.output<typeof noteSchema>

const git = (...args: readonly string[]): string =>
  execFileSync('git', [...args], { encoding: 'utf8', maxBuffer: 1e9 }).trim()

/** Marks a folder that holds anything else than its commit, so that other changes begin anew; files not yet added count by name. */
const changes = (): string => {
  const status = git('status', '--porcelain')
  const mark = createHash('sha256').update(status).update(git('diff', 'HEAD')).digest('hex').slice(0, 12)
  return status === '' ? '' : ` and changes ${mark}`
}

const commit = `${git('rev-parse', 'HEAD')}${changes()}`

const notePath = (name: string): string => join(folder, `${name}.json`)

const readNote = (name: string): Note => {
  const fresh = { commit, date: new Date().toISOString(), done: 0, faults: [], ends: {} }
  try {
    const note = noteSchema.parse(JSON.parse(readFileSync(notePath(name), 'utf8')))
    return note.commit === commit ? note : fresh
  } catch {
    return fresh
  }
}

const writeNote = (name: string, note: Note): Note => {
  const dated = { ...note, date: new Date().toISOString() }
  // Whole or not there: a run may be stopped at any moment.
  writeFileSync(`${notePath(name)}.unfinished`, `${JSON.stringify(dated, null, 2)}\n`)
  renameSync(`${notePath(name)}.unfinished`, notePath(name))
  return dated
}

/** Seeds from `note.done` on for some seconds. */
const goOn = async ({ count, attempt }: LongCount, note: Note): Promise<Note> => {
  const untilMs = performance.now() + NOTE_EVERY_MS
  const faults = [...note.faults]
  const ends = { ...note.ends }
  let { done } = note
  for (; done < count && performance.now() < untilMs; done++) {
    const came = await attempt(done)
    const { fault, end } = came === null || typeof came === 'string' ? { fault: came, end: null } : came
    if (fault !== null) faults.push(`seed ${done}: ${fault}`)
    if (end !== null) ends[end] = (ends[end] ?? 0) + 1
  }
  return { ...note, done, faults, ends }
}

const run = async (long: LongCount): Promise<Note> => {
  let note = readNote(long.name)
  while (note.done < long.count) {
    note = writeNote(long.name, await goOn(long, note))
    process.stderr.write(`${long.name}: ${note.done} of ${long.count}\n`)
  }
  await long.end?.()
  for (const fault of note.faults) console.log(fault)
  for (const [end, times] of Object.entries(note.ends)) console.log(`${long.name}: ${times} ${end}`)
  console.log(`${long.name}: ${note.done} seeds, ${note.faults.length} faults, ${note.date}, commit ${note.commit}`)
  return note
}

mkdirSync(folder, { recursive: true })
// The browser runs the program as built.
if (isBuildStale(root) && !(await build(root))) process.exit(1)
let failed = 0
const wanted = counts.filter(({ name }) => process.argv.length < 3 || process.argv.includes(name))
for (const long of wanted) if ((await run(long)).faults.length > 0) failed++
console.log(`\n${wanted.length - failed} passed, ${failed} failed`)
process.exitCode = failed === 0 ? 0 : 1
