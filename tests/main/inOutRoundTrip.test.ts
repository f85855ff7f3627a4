import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type InOutNoun, inOutNouns, tableNouns } from '../../main/contract/inOut.ts'
import { formOf } from '../../main/inOut/nouns.ts'
import { type FileBench, openFileBench } from './inOutSupport.ts'
import { bundleOf, type RandomRack, randomRack } from './randomRack.ts'
import { temporaryFolder } from './support.ts'

let places: ReturnType<typeof temporaryFolder>[] = []
let benches: FileBench[] = []
const newBench = async (mark: string): Promise<FileBench> => {
  const place = temporaryFolder()
  const bench = await openFileBench(place.folder, mark)
  places.push(place)
  benches.push(bench)
  return bench
}
const putAway = async () => {
  for (const bench of benches) await bench.workshop.close()
  for (const place of places) place.remove()
  places = []
  benches = []
}
beforeEach(() => void putAway())
afterEach(putAway)

const textOf = (bytes: Uint8Array): string => new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes)

/** A rack of every noun a few times over; noun by noun each takes thirty files in and out. A failing one is as readable as a shrunk one. */
const tried = (racks: number) => ({ numRuns: racks, seed: 26, endOnFailure: true })

const added = (counts: readonly { readonly added: number; readonly faulty: number }[]) =>
  counts.map((each) => [each.added, each.faulty])

describe('what is taken out and brought into an empty rack is taken out again, byte for byte', () => {
  it('as one document with its pictures', async () => {
    await fc.assert(
      fc.asyncProperty(randomRack, async (rack) => {
        const first = await newBench('aaaaaaaa')
        const brought = await first.bring(bundleOf(rack))
        expect(added(brought.counts)).toEqual(inOutNouns.map((noun) => [rack[noun]?.length, 0]))
        const bundle = await first.out({ what: 'rack', form: 'bundle' })
        const second = await newBench('cccccccc')
        await second.bring(bundle)
        expect(Buffer.from(await second.out({ what: 'rack', form: 'bundle' })).equals(bundle)).toBe(true)
        // Nothing was lost on the way in either: what stands is what was given, in another order of keys.
        const document = JSON.parse(textOf(await second.out({ what: 'rack', form: 'json' })))
        const { photo: _, ...others } = rack
        expect(document.records).toEqual(JSON.parse(JSON.stringify(others)))
        await putAway()
      }),
      tried(5),
    )
  })

  it.each(['csv', 'json'] as const)('noun by noun as %s', async (form) => {
    await fc.assert(
      fc.asyncProperty(randomRack, async (rack) => {
        const first = await newBench('aaaaaaaa')
        await first.bring(bundleOf(rack))
        const second = await newBench('cccccccc')
        for (const noun of tableNouns) {
          const file = textOf(await first.out({ what: noun, form }))
          const { faults } = await second.look(file, { noun })
          expect(faults).toEqual([])
          const { counts } = await second.bring(file, { noun })
          expect(counts).toMatchObject([{ noun, added: rack[noun]?.length, changed: 0, back: 0, same: 0, faulty: 0 }])
          expect(textOf(await second.out({ what: noun, form }))).toBe(file)
        }
        await putAway()
      }),
      tried(form === 'csv' ? 2 : 1),
    )
  })

  it('and again into the rack it came from, where nothing is to be done', async () => {
    const [rack] = fc.sample(randomRack, { numRuns: 1, seed: 5 }) as [RandomRack]
    const bench = await newBench('aaaaaaaa')
    await bench.bring(bundleOf(rack))
    for (const form of ['csv', 'json'] as const)
      for (const noun of tableNouns) {
        const { counts, changeId } = await bench.bring(await bench.out({ what: noun, form }), { noun })
        expect(counts).toMatchObject([{ added: 0, changed: 0, back: 0, same: rack[noun]?.length, faulty: 0 }])
        expect(changeId).toBe(0)
      }
  })
})

it('every noun has heads of its own, and they name its columns again', async () => {
  const bench = await newBench('aaaaaaaa')
  for (const noun of tableNouns) {
    const file = await bench.out({ what: noun as InOutNoun, form: 'csv' })
    const { table, noun: guessed } = await bench.look(file, { noun })
    const keys = formOf(noun).columns.map(({ key }) => key)
    expect(table?.columns.map(({ key }) => key)).toEqual(['code', ...keys, 'id'])
    expect(new Set(table?.columns.map(({ header }) => header)).size).toBe(keys.length + 2)
    expect(guessed).toBe(noun)
  }
})
