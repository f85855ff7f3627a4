import BetterSqlite from 'better-sqlite3'
import type { Problem } from '../../geometry/result.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { makeCard, makeCards } from '../../main/cards/makeCard.ts'
import { type CallName, calls } from '../../main/contract/calls.ts'
import { createTexts } from '../../main/contract/texts.ts'
import { makeLabels } from '../../main/labels/makeLabels.ts'
import { makeWorksheet } from '../../main/lessons/makeWorksheet.ts'
import { createReports } from '../../main/reports/reports.ts'
import { createRouter, type Router } from '../../main/router.ts'
import { makeTemplate } from '../../main/template/makeTemplate.ts'
import { makeDaySheet } from '../../main/work/makeDaySheet.ts'
import { createServices } from '../../main/workshop/allServices.ts'
import { createBlobs } from '../../main/workshop/blobs.ts'
import { openWorkshop, type Workshop } from '../../main/workshop/workshop.ts'
import type { Outcome } from '../long/count.ts'
import { countedIds, temporaryFolder, tickingClock } from '../main/support.ts'
import { randomInput } from './randomInput.ts'
import { seeded } from './seeded.ts'

const texts = createTexts()
const names = Object.keys(calls) as CallName[]
/** From what belongs there to what belongs nowhere. */
const JUNK = [0, 0, 0.03, 0.15, 0.6]
/** So many calls are made on one data file, which is then looked through. */
const CALLS_PER_FILE = 200
/** As many ids as are remembered: enough for records that refer to one another. */
const MOST_KNOWN = 60

interface Serving {
  readonly workshop: Workshop
  readonly router: Router
  readonly faults: unknown[]
  readonly remove: () => void
}

const serve = async (): Promise<Serving> => {
  const place = temporaryFolder()
  const now = tickingClock()
  const opened = await openWorkshop({
    dataDir: place.folder,
    who: 'fuzz',
    now,
    newId: countedIds(),
    log: () => undefined,
  })
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
  const faults: unknown[] = []
  const services = createServices(opened.value, {
    blobs: createBlobs(),
    reports: createReports(place.folder, now),
    solveJob,
    makeCard: (given) => makeCard(...given),
    makeCards: (given) => makeCards(...given),
    makeDaySheet: (given) => makeDaySheet(...given),
    makeTemplate: (given) => makeTemplate(...given),
    makeLabels: (given) => makeLabels(...given),
    makeWorksheet: (given) => makeWorksheet(...given),
  })
  const router = createRouter(services, { onFault: (error) => faults.push(error), readsThrough: async () => true })
  return { workshop: opened.value, router, faults, remove: place.remove }
}

const UUID = /[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[0-9a-f]{4}-[0-9a-f]{12}/g

const isCoded = (result: unknown): boolean => {
  const { ok, problems = [] } = result as { readonly ok: boolean; readonly problems?: readonly Problem[] }
  const inWords = problems.every(({ code, params }) => texts.exists(`problems:${code}`, { ...params }))
  return ok || (problems.length > 0 && inWords)
}

const shown = (input: unknown): string => (JSON.stringify(input) ?? String(input)).slice(0, 600)

const faultOfCall = async ({ router, faults }: Serving, name: CallName, input: unknown): Promise<string | null> => {
  const result = await router.handle(name, input, 'fuzz', () => undefined)
  const [error] = faults
  if (error !== undefined)
    return `${name} ${shown(input)}: ${error instanceof Error ? (error.stack ?? error.message).slice(0, 900) : String(error)}`
  if (!isCoded(result)) return `${name} ${shown(input)}: answered ${shown(result)}`
  return ({} as { polluted?: unknown }).polluted === undefined ? null : `${name}: every object is polluted`
}

const faultOfFile = (path: string): string | null => {
  const file = new BetterSqlite(path, { readonly: true })
  const check = file.pragma('integrity_check', { simple: true })
  const broken = file.pragma('foreign_key_check') as unknown[]
  file.close()
  return check === 'ok' && broken.length === 0 ? null : `the file: ${check}, ${broken.length} broken references`
}

/**
 * Calls of all kinds with inputs from right to senseless, in the order that the seed gives, on one data file.
 * @returns the first that was answered otherwise than with success or a problem in words, or what is wrong with the file then
 */
export const faultOfCalls = async (seed: number, count = CALLS_PER_FILE): Promise<string | null> => {
  const serving = await serve()
  const random = seeded(seed)
  const known: string[] = []
  try {
    for (let k = 0; k < count; k++) {
      const name = names[Math.floor(random() * names.length)] as CallName
      const junk = JUNK[Math.floor(random() * JUNK.length)] as number
      const input = randomInput(calls[name].input, { random, known, junk })
      const fault = await faultOfCall(serving, name, input)
      if (fault !== null) return fault
      if (name.endsWith('.list') || name === 'tool.find' || k % 20 === 0) await remember(serving, known)
    }
    const path = serving.workshop.path()
    await serving.workshop.close()
    return faultOfFile(path)
  } finally {
    await serving.workshop.close().catch(() => undefined)
    serving.remove()
  }
}

const lists = ['tool.find', 'station.list', 'fixture.list', 'person.list', 'place.list', 'lesson.list'] as const

const remember = async ({ router }: Serving, known: string[]): Promise<void> => {
  for (const name of lists) {
    const found = JSON.stringify(await router.handle(name, {}, 'fuzz', () => undefined)).match(UUID) ?? []
    known.push(...found.slice(0, 8))
  }
  known.splice(0, Math.max(0, known.length - MOST_KNOWN))
}

/** For the long count: how many calls were answered. */
export const outcomeOfCalls = async (seed: number): Promise<Outcome> => {
  const fault = await faultOfCalls(seed)
  return { fault, end: fault === null ? `${CALLS_PER_FILE} calls answered` : 'fault' }
}
