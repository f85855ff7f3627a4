import fc from 'fast-check'
import { tableNouns } from '../../main/contract/inOut.ts'
import { type FileBench, openFileBench } from '../main/inOutSupport.ts'
import { bundleOf, type RandomRack, randomRack } from '../main/randomRack.ts'
import { temporaryFolder } from '../main/support.ts'

/** A rack of one's own for one attempt, put away after it. */
const onBench = async <T>(mark: string, work: (bench: FileBench) => Promise<T>): Promise<T> => {
  const place = temporaryFolder()
  const bench = await openFileBench(place.folder, mark)
  try {
    return await work(bench)
  } finally {
    await bench.workshop.close()
    place.remove()
  }
}

const nounFault = async (first: FileBench, second: FileBench): Promise<string | null> => {
  for (const noun of tableNouns)
    for (const form of ['csv', 'json'] as const) {
      const file = await first.out({ what: noun, form })
      await second.bring(file, { noun })
      if (!Buffer.from(await second.out({ what: noun, form })).equals(file))
        return `${noun} as ${form} came out otherwise`
    }
  return null
}

/** @returns what was lost of the random rack of this seed on its way out, in and out again, or null */
export const faultWithRandomRack = async (seed: number): Promise<string | null> => {
  const [rack] = fc.sample(randomRack, { numRuns: 1, seed }) as [RandomRack]
  try {
    return await onBench('aaaaaaaa', async (first) => {
      await first.bring(bundleOf(rack))
      const bundle = await first.out({ what: 'rack', form: 'bundle' })
      const whole = await onBench('cccccccc', async (second) => {
        await second.bring(bundle)
        return Buffer.from(await second.out({ what: 'rack', form: 'bundle' })).equals(bundle)
      })
      return whole ? onBench('cccccccc', (second) => nounFault(first, second)) : 'the whole rack came out otherwise'
    })
  } catch (error) {
    return error instanceof Error ? error.message : String(error)
  }
}
