import { setImmediate } from 'node:timers/promises'
import { isDeepStrictEqual } from 'node:util'
import { type Problem, problem } from '../../geometry/result.ts'
import { problemsOf } from '../../geometry/zodProblems.ts'
import { codeOfNoun } from '../contract/codes.ts'
import type { Database } from '../database/schema.ts'
import type { Named } from './cells.ts'
import type { Known } from './known.ts'
import { type AnyRecord, type Draft, draftOf, type NounForm } from './nouns.ts'
import type { Offered, OfferedRow } from './offered.ts'
import { type Place, placesOf, recordsOfIds } from './standing.ts'

/** What becomes of a row. */
type Fate = 'added' | 'changed' | 'back' | 'same'

/** A row of a file, judged. */
export interface Planned {
  readonly row: number
  readonly fate: Fate
  readonly id: string
  /** Null: it gets the next one. */
  readonly code: string | null
  /** Its row of the rack, standing or not. */
  readonly place: Place | null
  readonly before: AnyRecord | null
  readonly draft: Draft
}

/** A row that cannot come in, with the reasons. A problem's `path` is the key. */
export interface Refused {
  readonly row: number
  readonly id: string
  /** Whether the rack has the record, which then stays as it is. */
  readonly stands: boolean
  readonly problems: readonly Problem[]
}

export interface NounPlan {
  readonly form: NounForm
  readonly offered: Offered
  readonly planned: readonly Planned[]
  readonly refused: readonly Refused[]
}

/** A row that was told which record it is, and not yet what it says. */
interface Identified {
  readonly offered: OfferedRow
  readonly id: string
  readonly code: string | null
  readonly place: Place | null
  readonly problems: readonly Problem[]
}

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i

const identify = (form: NounForm, places: readonly Place[], newId: () => string) => {
  const byId = new Map(places.map((place) => [place.id, place]))
  const byCode = new Map(places.map((place) => [place.code, place]))
  const seen = new Set<string>()
  const codesSeen = new Set<string>()

  /** A code that is free here; one that another record bears is given up for the next. */
  const freeCode = (code: string | null): string | null =>
    code === null || byCode.has(code) || codesSeen.has(code) ? null : code

  return (offered: OfferedRow, keyedBy: Offered['keyedBy']): Identified => {
    const problems = [...offered.problems]
    const code = offered.code === null ? null : codeOfNoun(form.noun, offered.code)
    if (offered.code !== null && code === null) problems.push(problem('codeForm', 'code', { code: offered.code }))
    if (offered.id !== null && !UUID.test(offered.id)) problems.push(problem('idForm', 'id'))
    const ofId = offered.id === null ? undefined : byId.get(offered.id)
    const ofCode = code === null ? undefined : byCode.get(code)
    const place = (keyedBy === 'code' || offered.id === null ? (code === null ? ofId : ofCode) : ofId) ?? null
    // An id that belongs to another record of the rack is not this one's.
    const id = place?.id ?? (offered.id !== null && !ofId ? offered.id : newId())
    if (seen.has(id) || (keyedBy === 'code' && code !== null && codesSeen.has(code)))
      problems.push(problem('rowTwice', keyedBy))
    seen.add(id)
    const given = place ? place.code : freeCode(code)
    if (given !== null) codesSeen.add(given)
    return { offered, id, code: given, place, problems }
  }
}

const isNamed = (value: unknown): value is Named => typeof value === 'object' && value !== null && 'words' in value

/** References that a table names by code or name, as ids. */
const withIds = (form: NounForm, says: Draft, known: Known, problems: Problem[]): Draft => {
  const named = form.columns.filter(({ key, holds }) => holds.kind === 'record' && isNamed(says[key]))
  if (named.length === 0) return says
  const found = named.map(({ key, holds }) => {
    const { words } = says[key] as Named
    const noun = holds.kind === 'record' ? holds.noun : form.noun
    const id = known.idOf(noun, words)
    if (id === null) problems.push(problem('notKnown', key, { words, noun }))
    return [key, id] as const
  })
  return { ...says, ...Object.fromEntries(found) }
}

/** Every text, however deep, must be whole: half a character cannot be written to a file and read again. */
const isWhole = (value: unknown): boolean => {
  if (typeof value === 'string') return value.isWellFormed()
  if (typeof value !== 'object' || value === null) return true
  return Object.entries(value).every(([key, each]) => key.isWellFormed() && isWhole(each))
}

const brokenTexts = (says: Draft): readonly Problem[] =>
  Object.entries(says).flatMap(([key, value]) => (isWhole(value) ? [] : [problem('textBroken', key)]))

/** What a file does not speak of is empty where it may be. */
const emptyOf = ({ columns }: NounForm): Draft =>
  Object.fromEntries(columns.filter(({ nullable }) => nullable).map(({ key }) => [key, null]))

/** What a row says, on top of what stands, as the schema takes it. */
const judge = (form: NounForm, row: Identified, before: AnyRecord | null, known: Known): Planned | Refused => {
  const problems = [...row.problems, ...brokenTexts(row.offered.says)]
  // What is no record at all has no entries to be missed.
  if (row.offered.problems.some(({ path, code }) => path === '' && code === 'wrongType'))
    return { row: row.offered.row, id: row.id, stands: false, problems: row.offered.problems }
  const says = withIds(form, row.offered.says, known, problems)
  const input = { ...(before === null ? emptyOf(form) : draftOf(form, before)), ...says }
  const parsed = form.draft.safeParse(input)
  const head = { row: row.offered.row, id: row.id, stands: row.place?.stands ?? false }
  const refused = (more: readonly Problem[]): Refused => {
    // A cell that could not be read is missing for the schema too: one reason is enough.
    const told = new Set(problems.map(({ path }) => path))
    return { ...head, problems: [...problems, ...more.filter(({ path }) => !told.has(path))] }
  }
  if (!parsed.success) return refused(problemsOf(parsed.error, input))
  if (problems.length > 0) return refused([])
  const draft = draftOf(form, parsed.data)
  const { id, code, place } = row
  return { row: row.offered.row, fate: fateOf(form, place, before, draft), id, code, place, before, draft }
}

const fateOf = (form: NounForm, place: Place | null, before: AnyRecord | null, draft: Draft): Fate => {
  if (place === null) return 'added'
  if (before === null) return 'back'
  return isDeepStrictEqual(draftOf(form, before), draft) ? 'same' : 'changed'
}

/** Rows judged before others have a turn: a few milliseconds. */
const ROWS_AT_ONCE = 1000

/** What judging needs beside the rows. */
export interface Judging {
  readonly known: Known
  newId(): string
  /** Told after every few rows. @throws where nobody waits any more */
  went(rows: number): void
}

/** @returns what would become of every row of one noun; its records are then known to the nouns after it */
export const planNoun = async (db: Database, form: NounForm, offered: Offered, judging: Judging): Promise<NounPlan> => {
  const { known, newId, went } = judging
  const recognise = identify(form, await placesOf(db, form.noun), newId)
  const rows = offered.rows.map((row) => recognise(row, offered.keyedBy))
  const standing = rows.filter(({ place }) => place?.stands).map(({ id }) => id)
  const records = await recordsOfIds(db, form, standing)
  for (const { id, code, offered: row } of rows) known.add(form.noun, id, code ?? row.code, row.says.name)
  const planned: Planned[] = []
  const refused: Refused[] = []
  for (const [i, row] of rows.entries()) {
    const judged = judge(form, row, records.get(row.id) ?? null, known)
    if ('fate' in judged) planned.push(judged)
    else {
      refused.push(judged)
      if (!judged.stands) known.drop(form.noun, judged.id)
    }
    if ((i + 1) % ROWS_AT_ONCE === 0) {
      went(ROWS_AT_ONCE)
      await setImmediate()
    }
  }
  went(rows.length % ROWS_AT_ONCE)
  return { form, offered, planned, refused }
}
