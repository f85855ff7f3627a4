import fc from 'fast-check'
import Papa from 'papaparse'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { type InOutNoun, tableNouns } from '../../main/contract/inOut.ts'
import { formOf } from '../../main/inOut/nouns.ts'
import { keptWords } from '../support/hostileWords.ts'
import { type FileBench, openFileBench } from './inOutSupport.ts'
import { documentOf, type RandomRack, randomRack } from './randomRack.ts'
import { temporaryFolder } from './support.ts'

const places = [temporaryFolder(), temporaryFolder(), temporaryFolder()] as const
const benches: FileBench[] = []
let rack: RandomRack
let hostile: readonly { readonly noun: InOutNoun; readonly id: unknown; readonly key: string; readonly words: string }[]

/** The rack with every entry of words in it filled with hostile ones, each with others, over and over. */
const filled = (sound: RandomRack): RandomRack => {
  let next = 0
  const words = () => keptWords[next++ % keptWords.length] as string
  return Object.fromEntries(
    tableNouns.map((noun) => {
      const keys = formOf(noun).columns.flatMap(({ key, holds }) => (holds.kind === 'words' ? [key] : []))
      const records = (sound[noun] ?? []).map((record) => ({
        ...record,
        ...Object.fromEntries(keys.map((key) => [key, words()])),
      }))
      return [noun, records]
    }),
  )
}

beforeAll(async () => {
  for (const [i, { folder }] of places.entries()) benches.push(await openFileBench(folder, `${'abc'[i]}`.repeat(8)))
  rack = filled(fc.sample(randomRack, { numRuns: 1, seed: 7 })[0] as RandomRack)
  hostile = tableNouns.flatMap((noun) =>
    (rack[noun] ?? []).flatMap((record) =>
      Object.entries(record).flatMap(([key, words]) =>
        typeof words === 'string' && keptWords.includes(words) ? [{ noun, id: record.id, key, words }] : [],
      ),
    ),
  )
  await benches[0]?.bring(documentOf(rack))
})
afterAll(async () => {
  for (const bench of benches) await bench.workshop.close()
  for (const place of places) place.remove()
})

const textOf = (bytes: Uint8Array): string => new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes)

it('every hostile word stands somewhere, in every field of words', () => {
  expect(new Set(hostile.map(({ words }) => words))).toEqual(new Set(keptWords))
  expect(hostile.length).toBeGreaterThan(60)
})

it.each([
  ['csv', 1],
  ['json', 2],
] as const)('hostile words go out as %s, come in and go out again byte for byte', async (form, second) => {
  const [first, other] = [benches[0] as FileBench, benches[second] as FileBench]
  for (const noun of tableNouns) {
    const file = textOf(await first.out({ what: noun, form }))
    const { counts } = await other.bring(file, { noun })
    expect(counts).toMatchObject([{ noun, added: rack[noun]?.length, faulty: 0 }])
    expect(textOf(await other.out({ what: noun, form }))).toBe(file)
  }
  // Nothing was changed on both ways alike: what stands is what was given.
  const { records } = JSON.parse(textOf(await other.out({ what: 'rack', form: 'json' })))
  expect(records).toEqual(JSON.parse(JSON.stringify(rack)))
})

it('what a spreadsheet would work out goes out with one apostrophe more, everything else as it is', async () => {
  for (const noun of tableNouns) {
    const file = textOf(await (benches[0] as FileBench).out({ what: noun, form: 'csv' }))
    const [head = [], ...rows] = Papa.parse<string[]>(file.slice(1), { delimiter: ',', newline: '\r\n' }).data
    for (const { id, key, words } of hostile.filter((each) => each.noun === noun)) {
      const cell = rows.find((row) => row.at(-1) === id)?.[head.indexOf(key)]
      const isFormula = ['=', '+', '-', '@', "'="].some((beginning) => words.startsWith(beginning))
      expect(cell).toBe(isFormula ? `'${words}` : words)
    }
  }
})
