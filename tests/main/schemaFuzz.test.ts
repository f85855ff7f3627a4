import { expect, it } from 'vitest'
import { faultOfCalls } from '../support/callFault.ts'

it.each([1, 2, 3])(
  'calls with senseless inputs are answered with success or a problem in words (seed %i)',
  async (seed) => {
    expect(await faultOfCalls(seed, 170)).toBeNull()
  },
)
