import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import BetterSqlite from 'better-sqlite3'
import { type CallName, calls } from '../../main/contract/calls.ts'
import type { Outcome } from '../long/count.ts'
import type { Bench } from '../main/support.ts'
import { openOwnBench, stationDraft, steeredDraft, temporaryFolder, toolDraft } from '../main/support.ts'
import { seeded } from './seeded.ts'

/** A rack with something of most nouns, closed cleanly, and a copy of it; made once a run. */
const makeOriginal = async (): Promise<string> => {
  const place = temporaryFolder()
  const bench = await openOwnBench(place.folder)
  await bench.done('station.add', stationDraft)
  await bench.done('fixture.add', steeredDraft)
  const { value: room } = await bench.done('place.add', { name: 'Loft' })
  for (let n = 0; n < 60; n += 1) {
    const { value: tool } = await bench.done('tool.add', {
      ...toolDraft,
      placeId: room.id,
      note: `note ${n} of many words`,
    })
    await bench.done('happening.add', {
      toolId: tool.id,
      kind: 'honed',
      at: '2026-01-02T08:00:00.000Z',
      note: `n ${n}`,
    })
    if (n % 3 === 0) await bench.done('loan.lend', { toolIds: [tool.id], person: `Person ${n % 7}` })
    if (n % 5 === 0) await bench.done('change.undo', {})
  }
  await bench.done('copy.make', {})
  await bench.workshop.close()
  return place.folder
}
let original: Promise<string> | null = null
const madeOriginal = (): Promise<string> => {
  original ??= makeOriginal()
  return original
}

const copyTo = (from: string, to: string): void => {
  mkdirSync(join(to, 'backups'), { recursive: true })
  copyFileSync(join(from, 'own.db'), join(to, 'own.db'))
  for (const name of readdirSync(join(from, 'backups')))
    copyFileSync(join(from, 'backups', name), join(to, 'backups', name))
}

/** What a window asks for when it opens and is looked around in. */
const QUESTIONS: readonly (readonly [CallName, unknown])[] = [
  ['workshop.get', {}],
  ['tool.find', {}],
  ['tool.find', { search: 'note 1' }],
  ['tool.find', { sort: 'due', filter: { due: 'any' } }],
  ['tool.standing', {}],
  ['station.list', {}],
  ['place.list', {}],
  ['person.list', {}],
  ['settings.get', {}],
  ['change.list', { most: 200 }],
  ['tool.add', toolDraft],
  ['change.undo', {}],
  ['copy.list', {}],
  ['copy.make', {}],
]

/**
 * A damaged file may say anything, but only in words that the catalogue has, and never `serviceFailed`, which is a fault of
 * the program.
 *
 * @returns what it said of the damage
 */
const askAll = async (bench: Bench): Promise<{ readonly faults: readonly string[]; readonly told: boolean }> => {
  const faults: string[] = []
  let told = false
  for (const [name, input] of QUESTIONS) {
    if (!Object.hasOwn(calls, name)) throw new Error(`${name} is no call`)
    const answer = await bench.raw(name, input)
    const [problem] = answer.ok ? [] : answer.problems
    told ||= problem !== undefined
    if (problem?.code === 'serviceFailed') faults.push(`${name} ${JSON.stringify(input)} failed without a word`)
  }
  return { faults, told }
}

/** Everything that a file holds, table by table, its indexes judged by SQLite; null: it cannot be read to its end. */
const contentsOf = (path: string): ReadonlyMap<unknown, string> | null => {
  const file = new BetterSqlite(path, { readonly: true })
  try {
    const names = file.prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND sql NOT LIKE '%VIRTUAL%'")
    const rows = (table: unknown) => JSON.stringify(file.prepare(`SELECT * FROM "${table}"`).all())
    const tables = names.pluck().all()
    return new Map([
      ...tables.map((table) => [table, rows(table)] as const),
      ['indexes', String(file.pragma('integrity_check', { simple: true }))],
    ])
  } catch {
    return null
  } finally {
    file.close()
  }
}

/** Bits turned over in a page: one, as a failing memory does it, or a run, as a failing disk does. */
const flip = (path: string, seed: number): Buffer => {
  const bytes = readFileSync(path)
  const random = seeded(seed)
  const at = Math.floor(random() * bytes.length)
  const many = random() < 0.5 ? 1 : 64
  for (let k = 0; k < many && at + k < bytes.length; k += 1)
    bytes[at + k] = (bytes[at + k] as number) ^ (1 << Math.floor(random() * 8))
  writeFileSync(path, bytes)
  return bytes
}

/** After a file was put aside: its bytes are all there, and the best copy brings the rack back. */
const faultsAside = async (bench: Bench, folder: string, damaged: Buffer): Promise<readonly string[]> => {
  const aside = readdirSync(folder).find((name) => name.includes('-damaged-'))
  if (aside === undefined) return ['a damaged file was said to be put aside and is not there']
  if (!readFileSync(join(folder, aside)).equals(damaged)) return ['the damaged file is not as it was']
  const [copy] = (await bench.done('copy.list', {})).copies.filter(({ bytes }) => bytes > damaged.length / 2)
  if (!copy) return ['no copy is offered']
  await bench.done('copy.restore', { name: copy.name })
  const { tools } = await bench.done('tool.standing', {})
  return tools > 40 ? [] : [`the copy brought ${tools} tools back`]
}

/** How a flip may end. What is unseen is a figure or a word that is another, in a file whose structure is whole. */
const ends = {
  refused: 'refused in words, the file left as it is',
  aside: 'put aside, a copy brings the rack back',
  told: 'told where it is met, the rest goes on',
  harmless: 'harmless: everything that is kept reads as before',
  history: 'unseen, in the history alone',
  unseen: 'unseen, in what stands',
} as const

/** Refused in the program's own words, the file left as it is. */
const outcomeOfRefusal = (error: Error, path: string, damaged: Buffer): Outcome => {
  const isInWords = /"code":"(notARack|rackTooNew|dataDamaged|dataUnreadable)"/.test(error.message)
  const fault = isInWords && readFileSync(path).equals(damaged) ? null : `not opened: ${error.message}`
  return { fault, end: ends.refused }
}

/** What a file that nobody complained of holds, beside what it held. */
const quietEnd = (is: ReturnType<typeof contentsOf>, was: ReturnType<typeof contentsOf>): string => {
  const others = [...(was ?? [])].filter(([table, rows]) => is?.get(table) !== rows).map(([table]) => table)
  if (others.length === 0) return ends.harmless
  return others.every((table) => table === 'change') ? ends.history : ends.unseen
}

const outcomeOfAsking = async (bench: Bench, path: string): Promise<Outcome> => {
  const end = quietEnd(contentsOf(path), contentsOf(join(await madeOriginal(), 'own.db')))
  const { faults, told } = await askAll(bench)
  return { fault: faults.length === 0 ? null : faults.join('; '), end: told ? ends.told : end }
}

/** @returns how a rack's file is met whose bits of this seed were turned over, and what is wrong with that */
export const outcomeOfFlip = async (seed: number): Promise<Outcome> => {
  const place = temporaryFolder()
  try {
    copyTo(await madeOriginal(), place.folder)
    const path = join(place.folder, 'own.db')
    const damaged = flip(path, seed)
    const opened = await openOwnBench(place.folder).catch((error: Error) => error)
    if (opened instanceof Error) return outcomeOfRefusal(opened, path, damaged)
    const { notices = [] } = await opened.done('workshop.get', {})
    const isAside = notices.some(({ code }) => code === 'rackMovedAside')
    if (!isAside) {
      const outcome = await outcomeOfAsking(opened, path)
      await opened.workshop.close()
      return outcome
    }
    const faults = await faultsAside(opened, place.folder, damaged)
    await opened.workshop.close()
    return { fault: faults.length === 0 ? null : faults.join('; '), end: ends.aside }
  } catch (error) {
    return { fault: error instanceof Error ? (error.stack ?? error.message) : String(error), end: 'failed' }
  } finally {
    place.remove()
  }
}
