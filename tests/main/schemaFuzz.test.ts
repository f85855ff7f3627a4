import { afterAll, expect, it } from 'vitest'
import { calls } from '../../main/contract/calls.ts'
import { endInputs, outcomeOfInput } from '../support/schemaFault.ts'

/** A few of each call; `npm run test:long -- schemaFuzz` goes on from there. */
const EACH = 5

afterAll(endInputs)

it('whatever a call is given is taken or refused with a sentence, and the data file stays sound', async () => {
  const faults: string[] = []
  const ends = new Set<string>()
  for (let seed = 0; seed < EACH * Object.keys(calls).length; seed++) {
    const { fault, end } = await outcomeOfInput(seed)
    ends.add(end)
    if (fault !== null) faults.push(`seed ${seed}: ${fault}`)
  }
  expect(faults).toEqual([])
  expect(ends).toEqual(new Set(['taken', 'refused with a sentence']))
})
