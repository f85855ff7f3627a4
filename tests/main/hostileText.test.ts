import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import type { CallName } from '../../main/contract/calls.ts'
import { calls } from '../../main/contract/calls.ts'
import { askedSchema } from '../../main/contract/finding.ts'
import { createBlobs } from '../../main/workshop/blobs.ts'
import { keptWords, LONG_WORDS, refusedWords } from '../support/hostileWords.ts'
import { type Bench, codesOf, openOwnBench, stationDraft, steeredDraft, temporaryFolder, toolDraft } from './support.ts'

type Entries = Record<string, unknown>

const BLOB = '00000000-0000-4000-8000-0000000000b1'
const FIELD = '00000000-0000-4000-8000-0000000000f1'
let folder: ReturnType<typeof temporaryFolder>
let bench: Bench
const ids: Record<string, string> = {}
beforeAll(async () => {
  folder = temporaryFolder()
  const blobs = createBlobs()
  blobs.put(BLOB, { bytes: Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 1]), fileName: '' }, 'application/octet-stream')
  bench = await openOwnBench(folder.folder, { blobs })
  ids.toolId = (await bench.done('tool.add', toolDraft)).value.id
  ids.stationId = (await bench.done('station.add', stationDraft)).value.id
})
afterAll(async () => {
  await bench.workshop.close()
  folder.remove()
})

const at = '2026-01-02T08:00:00.000Z'
/** A sound record of each noun that is written down in words, without its own. */
const drafts: Readonly<Record<string, () => Entries>> = {
  tool: () => ({ ...toolDraft }),
  station: () => ({ ...stationDraft }),
  fixture: () => ({ ...steeredDraft }),
  place: () => ({ name: 'Loft', note: '' }),
  person: () => ({ name: 'Wren' }),
  purpose: () => ({ name: 'fine', note: '' }),
  ownField: () => ({ name: 'bought', kind: 'words', unit: '', choices: [] }),
  keptFilter: () => ({ name: 'due', asked: '{}' }),
  toolTemplate: () => ({ name: 'jack', draft: '{}' }),
  happening: () => ({ toolId: ids.toolId, kind: 'honed', at, who: '', note: '' }),
  dressing: () => ({ stationId: ids.stationId, kind: 'dressed', at, diameterMm: 250, who: '', note: '' }),
  photo: () => ({ toolId: ids.toolId, blobId: BLOB, widthPx: 1, heightPx: 1, caption: '' }),
  benchLog: () => ({
    ...{ toolId: ids.toolId, stage: 'asFound', reliefLeftMm: null, reliefRightMm: null },
    ...{ who: '', note: '' },
  }),
}

interface Answer {
  readonly ok: boolean
  readonly value?: { readonly value: Entries }
}

/** What a call is given beside the words, and what holds them afterwards at the same place as the call's input did. */
interface Trial {
  given(): Promise<Entries>
  after(answer: Answer, given: Entries): unknown
}

const recordOf = ({ value }: Answer): Entries => value?.value ?? {}

const add = async (noun: string): Promise<{ readonly id: string; readonly version: number }> => {
  const { id, version } = recordOf((await bench.raw(`${noun}.add`, drafts[noun]?.())) as Answer)
  return { id: String(id), version: Number(version) }
}

const toolNow = async (id: unknown): Promise<Entries> => ({ ...(await bench.done('tool.one', { id: String(id) })) })

const named = { given: async () => ({ toolIds: [(await add('tool')).id] }) }
/** The name of whoever has the tool. */
const holderOf = async ({ toolIds }: Entries): Promise<unknown> => (await toolNow((toolIds as string[])[0])).holder
const lastHappening = async ({ toolIds }: Entries): Promise<unknown> =>
  (await bench.done('happening.list', { toolId: (toolIds as string[])[0] ?? '' }))[0]

/** Calls that are neither adding nor editing a record of words. */
const others: Readonly<Record<string, Trial>> = {
  'loan.lend': { ...named, after: async (_, given) => ({ person: await holderOf(given) }) },
  'tool.errand person': {
    given: async () => ({ ...(await named.given()), errand: { does: 'lend' } }),
    after: async (_, given) => ({ errand: { person: await holderOf(given) } }),
  },
  'tool.errand who': {
    given: async () => ({ ...(await named.given()), errand: { does: 'honed' } }),
    after: (_, given) => lastHappening(given),
  },
  'tools.edit': {
    given: async () => ({ which: { ids: [(await add('tool')).id] }, set: {} }),
    after: async (_, { which }) => {
      const tool = await toolNow((which as { ids: string[] }).ids[0])
      return { set: { ...tool, noteAdded: tool.note } }
    },
  },
  'stocktake.see': {
    given: async () => {
      const stocktakeId = ids.stocktakeId ?? (await bench.done('stocktake.begin', { placeId: null })).value.id
      ids.stocktakeId = stocktakeId
      return { stocktakeId, toolId: (await add('tool')).id, placeId: null }
    },
    after: recordOf,
  },
  'authorisation.give': {
    given: async () => ({ personId: (await add('person')).id }),
    after: async (_, { personId }) =>
      (await bench.done('progress.list', {})).authorisations.find((each) => each.personId === personId),
  },
  'photo.edit': { given: () => add('photo'), after: recordOf },
  'settings.edit': { given: async () => ({}), after: recordOf },
}

const trialOf = (name: CallName, path: string): Trial => {
  const other = others[name] ?? others[`${name} ${path.split('.').at(-1)}`]
  if (other) return other
  const [noun = '', does] = name.split('.')
  const draft = drafts[noun] ?? (() => ({}))
  if (does === 'add') return { given: async () => draft(), after: recordOf }
  return {
    given: async () => ({ ...(await add(noun)), draft: draft() }),
    after: (answer) => ({ draft: recordOf(answer) }),
  }
}

const bare = (schema: z.ZodType): z.ZodType =>
  schema instanceof z.ZodDefault || schema instanceof z.ZodOptional || schema instanceof z.ZodNullable
    ? bare(schema.unwrap() as z.ZodType)
    : schema

const under = (path: string, key: string): string => (path === '' ? key : `${path}.${key}`)

/** Places in a call's input that take any words: not days, ids or one of a few. In a list the first, in a dictionary one. */
const wordyPaths = (given: z.ZodType, path = ''): readonly string[] => {
  const schema = bare(given)
  if (schema instanceof z.ZodString) return schema.safeParse('a b').success ? [path] : []
  if (schema instanceof z.ZodObject)
    return Object.entries(schema.shape).flatMap(([key, each]) => wordyPaths(each as z.ZodType, under(path, key)))
  if (schema instanceof z.ZodUnion) return schema.options.flatMap((each) => wordyPaths(each as z.ZodType, path))
  if (schema instanceof z.ZodArray) return wordyPaths(schema.element as z.ZodType, under(path, '0'))
  if (schema instanceof z.ZodRecord) return wordyPaths(schema.valueType as z.ZodType, under(path, FIELD))
  return []
}

/**
 * What finds records is not kept: those words are tried on the index below. A lesson has a door of its own
 * (lessons/parseLesson.test.ts), and is spoken of by its id; a report of a fault is a file of its own.
 */
const isKept = (path: string): boolean => !path.startsWith('which.') && path !== 'lessonId'
const isOther = (name: CallName): boolean =>
  ['copy.', 'lesson.', 'inOut.', 'file.', 'report.'].some((noun) => name.startsWith(noun))
const fields = (Object.keys(calls) as CallName[])
  .filter((name) => calls[name].kind !== 'query' && !isOther(name))
  .flatMap((name) => [...new Set(wordyPaths(calls[name].input))].filter(isKept).map((path) => [name, path] as const))

/** @returns the entries with words at a place, which need not be there yet */
const withWords = (given: Entries, path: string, words: string): Entries => {
  const [key = '', ...rest] = path.split('.')
  if (rest.length === 0) return Array.isArray(given) ? ([words] as unknown as Entries) : { ...given, [key]: words }
  const inner = withWords((given[key] ?? {}) as Entries, rest.join('.'), words)
  return { ...given, [key]: inner }
}

const wordsAt = (given: unknown, path: string): unknown =>
  path.split('.').reduce<unknown>((value, key) => (value as Entries | undefined)?.[key], given)

const write = async (name: CallName, given: Entries): Promise<Answer> => (await bench.raw(name, given)) as Answer

/** What an edited record is edited by next: most of the time of a trial is what it begins with. */
const nextOf = (given: Entries, { value }: Answer): Entries | null =>
  typeof given.version === 'number' && value ? { ...given, version: value.value.version } : null

it('every field of words of every command is tried', () => {
  expect(fields.length).toBeGreaterThan(55)
  for (const noun of Object.keys(drafts)) expect([...new Set(fields.map(([name]) => name))]).toContain(`${noun}.add`)
})

describe.each(fields)('%s, %s', (name, path) => {
  it('gives hostile words back as they were', async () => {
    let next: Entries | null = null
    for (const words of keptWords) {
      const given: Entries = withWords(next ?? (await trialOf(name, path).given()), path, words)
      const answer = await write(name, given)
      expect(answer).toMatchObject({ ok: true })
      expect(wordsAt(await trialOf(name, path).after(answer, given), path)).toBe(words)
      next = nextOf(given, answer)
    }
  })

  it('refuses at its place what is no text, or too long', async () => {
    const given = await trialOf(name, path).given()
    for (const words of Object.values(refusedWords)) {
      const answer = await write(name, withWords(given, path, words))
      expect(answer).toMatchObject({ ok: false, problems: [{ path }] })
      expect(codesOf(answer as Awaited<ReturnType<Bench['raw']>>)).not.toContain('serviceFailed')
    }
  })

  it('refuses ten thousand letters or keeps every one', async () => {
    const given = withWords(await trialOf(name, path).given(), path, LONG_WORDS)
    const answer = await write(name, given)
    if (answer.ok) expect(wordsAt(await trialOf(name, path).after(answer, given), path)).toBe(LONG_WORDS)
    else expect(answer).toMatchObject({ problems: [{ path, code: 'tooLong' }] })
  })
})

it('nothing that is typed to find tools breaks the index', async () => {
  const typed = [
    ...keptWords,
    ...Object.values(refusedWords),
    '"',
    '*',
    'NEAR(a b)',
    'a AND',
    '-x',
    '^a',
    'words:a',
    '(',
    'a"b*',
    '\u0e33 \u0e01\u0e33',
    '%_',
    "'",
    '\u0308',
    '50° ½ №',
  ]
  for (const search of typed.map((words) => words.slice(0, 200))) {
    const found = await bench.call('tool.find', askedSchema.parse({ search }))
    expect([search, codesOf(found)]).toEqual([search, []])
  }
})
