import { copyFileSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { type CallName, calls } from '../../main/contract/calls.ts'
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

/** A damaged file may say anything, but only in words that the catalogue has, and never `serviceFailed`, which is a fault of the program. */
const askAll = async (bench: Bench): Promise<readonly string[]> => {
  const faults: string[] = []
  for (const [name, input] of QUESTIONS) {
    if (!Object.hasOwn(calls, name)) throw new Error(`${name} is no call`)
    const answer = await bench.raw(name, input)
    const [problem] = answer.ok ? [] : answer.problems
    if (problem?.code === 'serviceFailed') faults.push(`${name} ${JSON.stringify(input)} failed without a word`)
  }
  return faults
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

/** @returns what is wrong with how a rack's file is met whose bits of this seed were turned over, or null */
export const faultAfterFlip = async (seed: number): Promise<string | null> => {
  original ??= makeOriginal()
  const place = temporaryFolder()
  try {
    copyTo(await original, place.folder)
    const path = join(place.folder, 'own.db')
    const damaged = flip(path, seed)
    const opened = await openOwnBench(place.folder).catch((error: Error) => error)
    // Refused in the program's own words, the file left as it is.
    if (opened instanceof Error)
      return /"code":"(notARack|rackTooNew|dataDamaged)"/.test(opened.message) && readFileSync(path).equals(damaged)
        ? null
        : `not opened: ${opened.message}`
    const { notices = [] } = await opened.done('workshop.get', {})
    const isAside = notices.some(({ code }) => code === 'rackMovedAside')
    const faults = isAside ? await faultsAside(opened, place.folder, damaged) : await askAll(opened)
    await opened.workshop.close()
    return faults.length === 0 ? null : faults.join('; ')
  } catch (error) {
    return error instanceof Error ? (error.stack ?? error.message) : String(error)
  } finally {
    place.remove()
  }
}
