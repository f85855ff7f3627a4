import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import type { CallName } from '../../main/contract/calls.ts'
import { calls } from '../../main/contract/calls.ts'
import { askedSchema } from '../../main/contract/finding.ts'
import { type Bench, codesOf, openOwnBench, stationDraft, steeredDraft, temporaryFolder, toolDraft } from './support.ts'

let folder: ReturnType<typeof temporaryFolder>
let bench: Bench
const ids: Record<string, string> = {}
beforeAll(async () => {
  folder = temporaryFolder()
  bench = await openOwnBench(folder.folder)
  ids.toolId = (await bench.done('tool.add', toolDraft)).value.id
  ids.stationId = (await bench.done('station.add', stationDraft)).value.id
})
afterAll(async () => {
  await bench.workshop.close()
  folder.remove()
})

const at = '2026-01-02T08:00:00.000Z'
/** A sound record of each noun that is written down in words, without its own. */
const drafts: readonly (readonly [CallName, () => Record<string, unknown>])[] = [
  ['tool.add', () => ({ ...toolDraft })],
  ['station.add', () => ({ ...stationDraft })],
  ['fixture.add', () => ({ ...steeredDraft })],
  ['place.add', () => ({ name: 'Loft', note: '' })],
  ['person.add', () => ({ name: 'Wren' })],
  ['purpose.add', () => ({ name: 'fine', note: '' })],
  ['ownField.add', () => ({ name: 'bought', kind: 'words', unit: '' })],
  ['keptFilter.add', () => ({ name: 'due', asked: '{}' })],
  ['toolTemplate.add', () => ({ name: 'jack', draft: '{}' })],
  ['happening.add', () => ({ toolId: ids.toolId, kind: 'honed', at, who: '', note: '' })],
  ['dressing.add', () => ({ stationId: ids.stationId, kind: 'dressed', at, diameterMm: 250, who: '', note: '' })],
  [
    'benchLog.add',
    () => ({ toolId: ids.toolId, stage: 'asFound', reliefLeftMm: null, reliefRightMm: null, who: '', note: '' }),
  ],
]

const bare = (schema: z.ZodType): z.ZodType =>
  schema instanceof z.ZodDefault ? bare(schema.unwrap() as z.ZodType) : schema

/** Entries of a call's input that take any words: not days, ids or one of a few. */
const wordyKeys = (name: CallName): readonly string[] =>
  Object.entries((calls[name].input as z.ZodObject).shape ?? {}).flatMap(([key, schema]) =>
    bare(schema as z.ZodType) instanceof z.ZodString && bare(schema as z.ZodType).safeParse('a b').success ? [key] : [],
  )

const fields = drafts.flatMap(([name]) => wordyKeys(name).map((key) => [name, key] as const))

/** Words that must come back as they went in. */
const kept = [
  '<script>alert(1)</script><img src=x onerror=alert(1)>',
  '"><svg/onload=alert(1)>',
  '\u202eright to left\u202c \u2067\u05d0\u2069',
  'Zo\u0308e \u{1f528}\u{1f468}\u200d\u{1f3ed}',
  "'; DROP TABLE tool; --",
  '=HYPERLINK("x") +1 -1 @a',
  '{{name}} $t(common:close) %s',
  '../../etc/passwd\\..\\x',
  '__proto__',
]
/** Words that no file of text may hold, or too many of them. */
const refused = { surrogate: 'a\ud800b', nul: 'a\u0000b', long: 'n'.repeat(40_000) }

const write = (name: CallName, key: string, words: string) => {
  const draft = Object.fromEntries(drafts)[name]?.() ?? {}
  return bench.raw(name, { ...draft, [key]: words })
}

it('every field of words is tried', () => {
  expect(fields.length).toBeGreaterThan(25)
  // A picture needs its bytes; its words are the same schema as all others. A lesson is a document with a door of its own: lessons/parseLesson.test.ts.
  const wordy = (Object.keys(calls) as CallName[]).filter(
    (name) => name.endsWith('.add') && !['photo.add', 'lesson.add'].includes(name) && wordyKeys(name).length > 0,
  )
  expect(new Set(fields.map(([name]) => name))).toEqual(new Set(wordy))
})

describe.each(fields)('%s, %s', (name, key) => {
  it('gives hostile words back as they were', async () => {
    for (const words of kept) {
      const made = (await write(name, key, words)) as { ok: boolean; value?: { value: Record<string, unknown> } }
      expect(made).toMatchObject({ ok: true })
      expect(made.value?.value[key]).toBe(words)
    }
  })

  it('refuses at its place what is no text, or too long', async () => {
    for (const words of Object.values(refused)) {
      const made = await write(name, key, words)
      expect(made).toMatchObject({ ok: false, problems: [{ path: key }] })
      expect(codesOf(made)).not.toContain('serviceFailed')
    }
  })
})

it('nothing that is typed to find tools breaks the index', async () => {
  const typed = [
    ...kept,
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
  for (const search of typed) {
    const found = await bench.call('tool.find', askedSchema.parse({ search }))
    expect([search, codesOf(found)]).toEqual([search, []])
  }
})
