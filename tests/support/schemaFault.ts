import BetterSqlite from 'better-sqlite3'
import type { Problem, Result } from '../../geometry/result.ts'
import { type CallName, calls } from '../../main/contract/calls.ts'
import { createMaker } from '../../main/makerThread.ts'
import { createTexts } from '../../main/texts.ts'
import type { Outcome } from '../long/count.ts'
import {
  type Bench,
  openOwnBench,
  squareDraft,
  stationDraft,
  steeredDraft,
  temporaryFolder,
  toolDraft,
} from '../main/support.ts'
import { seeded } from './seeded.ts'
import { inputFor, type Source } from './shapedInput.ts'

/** A rack is begun anew after so many inputs, or what is valid among them would fill it without end. */
const INPUTS_A_RACK = 1000

/** What an error that nobody foresaw is told as; bad input must never come to that. */
const uncoded = ['serviceFailed', 'dataUnreadable', 'dataDamaged']

const names = Object.keys(calls) as CallName[]

/** Ids as `countedIds` gives them: those of the first records, and some that stand for nothing. */
const ids = Array.from({ length: 40 }, (_, i) => `aaaaaaaa-0000-4000-8000-${String(i + 1).padStart(12, '0')}`)

const { exists, t } = createTexts()
const maker = createMaker()

interface Stand {
  readonly bench: Bench
  readonly remove: () => void
}

let stand: Stand | null = null
let inputs = 0

const begin = async (): Promise<Stand> => {
  const { folder, remove } = temporaryFolder()
  const bench = await openOwnBench(folder, maker)
  await bench.done('tool.add', toolDraft)
  await bench.done('station.add', stationDraft)
  for (const draft of [steeredDraft, squareDraft]) await bench.done('fixture.add', draft)
  await bench.done('person.add', { name: 'Ann', apprentice: 'yes' })
  return { bench, remove }
}

const soundness = (path: string): string => {
  const file = new BetterSqlite(path, { readonly: true })
  try {
    return String(file.pragma('integrity_check', { simple: true }))
  } finally {
    file.close()
  }
}

/** Puts the rack away. @returns what is wrong with its file, or null */
const putAway = async (): Promise<string | null> => {
  if (stand === null) return null
  const { bench, remove } = stand
  stand = null
  const sound = soundness(bench.workshop.path())
  await bench.workshop.close()
  remove()
  return sound === 'ok' ? null : `integrity_check: ${sound}`
}

const faultOfProblem = ({ code, params }: Problem): string | null => {
  if (uncoded.includes(code)) return `answered ${code}`
  if (!exists(`problems:${code}`, { ...params })) return `no sentence for ${code}`
  const sentence = t(`problems:${code}`, { ...params })
  return sentence.includes('{{') && !Object.values(params).some((param) => String(param).includes('{{'))
    ? `${code} lacks a figure`
    : null
}

const faultOfAnswer = (answer: Result<unknown>): string | null => {
  if (answer.ok) return null
  if (answer.problems.length === 0) return 'refused without a reason'
  return answer.problems.map(faultOfProblem).find((fault) => fault !== null) ?? null
}

const isPolluted = (): boolean => 'isAdmitted' in {}

/** One call of the contract with one input made for it, valid or not. @returns what must never come of it, or null */
export const outcomeOfInput = async (seed: number): Promise<Outcome> => {
  const unsound = inputs++ % INPUTS_A_RACK === 0 ? await putAway() : null
  stand ??= await begin()
  const source: Source = { random: seeded(seed), ids }
  const name = names[seed % names.length] as CallName
  const input = inputFor(source, calls[name].input)
  try {
    const answer = await stand.bench.raw(name, input)
    const fault = unsound ?? faultOfAnswer(answer) ?? (isPolluted() ? 'every object was changed' : null)
    return { fault: fault && `${name}: ${fault}`, end: answer.ok ? 'taken' : 'refused with a sentence' }
  } catch (error) {
    return { fault: `${name} threw ${String(error)}`, end: 'thrown' }
  }
}

/** Puts away what the inputs have shared. @throws where the data file came to harm */
export const endInputs = async (): Promise<void> => {
  const unsound = await putAway()
  await maker.close()
  if (unsound !== null) throw new Error(unsound)
}
