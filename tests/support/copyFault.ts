import { cpSync, readdirSync, renameSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { copyPath, listCopies } from '../../main/backup/copies.ts'
import { bringBeside } from '../../main/backup/goBack.ts'
import { openWorkshop } from '../../main/workshop/workshop.ts'
import type { Outcome } from '../long/count.ts'
import {
  type Bench,
  codesOf,
  openOwnBench,
  temporaryFolder,
  tickingClock,
  toolDraft,
  toolsOf,
} from '../main/support.ts'
import { type FailingCalls, type FailingHow, type FailingWhat, failingCalls } from './faults.ts'

/** Which call of what fails, and how; counted from 1. */
export interface CopyFault {
  readonly what: FailingWhat
  readonly how: FailingHow
  readonly nth: number
}

/** The names of the tools before a going back to the newest copy, and after it. */
const BEFORE = 'kept later'
const AFTER = 'kept'
type Names = typeof BEFORE | typeof AFTER

/** What the user may be told while the program runs, and where its data cannot be opened. */
const told = ['backupFailed', 'oldCopiesStay', 'goingBackFailed', 'goingBackUndone', 'copyNotRead', 'diskFull']
const toldShut = ['rackNoRoom', 'rackNotOpened']

/** What an operation under a fault came to: what it said that is no good, and what the data may be. */
interface CameTo {
  readonly wrong: readonly string[]
  readonly may: readonly Names[]
}

const namesOf = async (bench: Bench): Promise<string> =>
  (await toolsOf(bench))
    .map(({ name }) => name)
    .sort()
    .join(' ')

const unknownCodes = (codes: readonly string[], known: readonly string[]): readonly string[] =>
  codes.slice(0, 1).flatMap((code) => (known.includes(code) ? [] : [`told ${code}`]))

type Fail = () => FailingCalls
interface Place {
  readonly folder: string
  readonly path: string
}
type Operation = (place: Place, fail: Fail) => Promise<CameTo>

const copying: Operation = async ({ folder }, fail) => {
  const bench = await openOwnBench(folder)
  const failing = fail()
  const made = await bench.call('copy.make', {})
  failing.end()
  const names = await namesOf(bench)
  await bench.workshop.close()
  const changed = names === BEFORE ? [] : [`a copy left ${names}`]
  return { wrong: [...unknownCodes(codesOf(made), told), ...changed], may: [BEFORE] }
}

const goingBack: Operation = async ({ folder, path }, fail) => {
  const bench = await openOwnBench(folder)
  const [copy] = listCopies(path)
  const failing = fail()
  const gone = await bench.call('copy.restore', { name: copy?.name ?? '' })
  failing.end()
  const codes = codesOf(gone)
  // A disk that stays full may leave nothing that can be opened; the next good start ends it one way or the other.
  if (codes.some((code) => toldShut.includes(code)) && codes[0] !== 'goingBackUndone')
    return { wrong: [], may: [BEFORE, AFTER] }
  const names = await namesOf(bench)
  await bench.workshop.close()
  const expected = gone.ok ? AFTER : BEFORE
  const lie = names === expected ? [] : [`told ${codes[0] ?? 'done'}, and there is ${names}`]
  return { wrong: [...unknownCodes(codes, told), ...lie], may: [expected] }
}

/** The start after a going back that was cut short, with the old file already put aside or not yet. */
const ending =
  (isAside: boolean): Operation =>
  async ({ folder, path }, fail) => {
    const [copy] = listCopies(path)
    bringBeside(path, join(folder, 'backups', copy?.name ?? ''))
    if (isAside) renameSync(path, copyPath(path, 'beforeGoingBack', new Date(0)))
    const failing = fail()
    const asked = { dataDir: folder, rack: 'own', who: 'tester', newId: () => 'none', log: () => undefined } as const
    const opened = await openWorkshop({ ...asked, now: tickingClock() })
    failing.end()
    if (opened.ok) await opened.value.close()
    return { wrong: unknownCodes(codesOf(opened), toldShut), may: [isAside ? AFTER : BEFORE] }
  }

/** What is done while a call fails. */
export const copyOperations = {
  copying,
  'going back': goingBack,
  'undoing a going back': ending(false),
  'ending a going back': ending(true),
} as const satisfies Record<string, Operation>

/** A rack with one tool more than its newest copy, and a copy that the next one takes the place of; made once a run. */
const makeOriginal = async (): Promise<string> => {
  const { folder } = temporaryFolder()
  const bench = await openOwnBench(folder)
  await bench.done('tool.add', { ...toolDraft, name: 'kept' })
  await bench.done('copy.make', {})
  await bench.done('tool.add', { ...toolDraft, name: 'later' })
  await bench.workshop.close()
  return folder
}
let original: Promise<string> | null = null

const isSound = (path: string): boolean => {
  const file = new BetterSqlite(path, { readonly: true })
  const answer = file.pragma('integrity_check', { simple: true })
  file.close()
  return answer === 'ok'
}

/** Nothing but data, copies and notes: no unfinished file, none on its way. */
const straysIn = (folder: string): readonly string[] =>
  [folder, join(folder, 'backups')]
    .flatMap((each) => readdirSync(each))
    .filter((name) => !/^(own(-.*)?\.db(-wal|-shm)?|choice\.json|backups)$/.test(name))

/** After a fault: every copy is whole, and a good start finds the data as it may be and leaves nothing lying about. */
const faultsAfter = async ({ folder, path }: Place, may: readonly Names[]): Promise<readonly string[]> => {
  const torn = listCopies(path).filter(({ name }) => !isSound(join(folder, 'backups', name)))
  const bench = await openOwnBench(folder)
  const names = await namesOf(bench)
  await bench.workshop.close()
  return [
    ...torn.map(({ name }) => `the copy ${name} is not whole`),
    ...(may.includes(names as Names) ? [] : [`a good start finds ${names}`]),
    ...(isSound(path) ? [] : ['the data is not sound']),
    ...straysIn(folder).map((name) => `${name} lies about`),
  ]
}

/**
 * One operation on copies with one fault, on a rack of its own.
 *
 * @returns what is wrong afterwards; and whether the fault was reached: false means that there are no more calls
 */
export const faultWithCopies = async (
  operation: keyof typeof copyOperations,
  { what, how, nth }: CopyFault,
): Promise<{ readonly fault: string | null; readonly reached: boolean }> => {
  original ??= makeOriginal()
  const { folder, remove } = temporaryFolder()
  const place = { folder, path: join(folder, 'own.db') }
  let failing: FailingCalls | null = null as FailingCalls | null
  const fail = (): FailingCalls => {
    failing = failingCalls(what, nth, how)
    return failing
  }
  try {
    cpSync(await original, folder, { recursive: true })
    const { wrong, may } = await copyOperations[operation](place, fail)
    const faults = [...wrong, ...(await faultsAfter(place, may))]
    const told = `${operation}, ${what} call ${nth} failing ${how}: ${faults.join('; ')}`
    return { fault: faults.length === 0 ? null : told, reached: (failing?.calls() ?? 0) >= nth }
  } finally {
    failing?.end()
    remove()
  }
}

const names = Object.keys(copyOperations) as (keyof typeof copyOperations)[]
const hows = (['file', 'statement'] as const).flatMap((what) =>
  (what === 'file' ? (['before', 'after', 'onwards'] as const) : (['before', 'onwards'] as const)).map(
    (how) => ({ what, how }) as const,
  ),
)

/** Every operation, every way to fail; further calls with further seeds: none makes more than 45, so 900 seeds reach all. */
export const outcomeOfCopyFault = async (seed: number): Promise<Outcome> => {
  const [operation, rest] = [names[seed % names.length], Math.floor(seed / names.length)]
  const [way, nth] = [hows[rest % hows.length], Math.floor(rest / hows.length) + 1]
  if (!operation || !way) throw new Error('there is no such seed')
  const { fault, reached } = await faultWithCopies(operation, { ...way, nth })
  return { fault, end: reached ? 'with a call that failed' : 'beyond the last call' }
}
