import fc from 'fast-check'
import { expect, it } from 'vitest'
import { grindOutcome } from '../support/grindFault.ts'
import { randomJobs } from '../support/randomJobs.ts'

const SEED = 20261125
const JOBS = 500
/** Named refusals of a grind; each has its sentence in the text catalogue. */
const refusals = ['noBalance', 'groundAway', 'tooLarge', 'pivotBeyondEdge']

it(`${JOBS} random jobs of all kinds grind without NaN, throw, growth or unbalanced step, seed ${SEED}`, () => {
  let refused = 0
  fc.assert(
    fc.property(randomJobs, (job) => {
      const { refusal, fault } = grindOutcome(job)
      expect(fault).toBeNull()
      if (refusal === null) return
      expect(refusals).toContain(refusal)
      refused++
    }),
    { seed: SEED, numRuns: JOBS },
  )
  // Ranges run far past what can bear the load (a wheel beside the iron, a blade that slips past the wheel): a fifth or so.
  expect(refused).toBeLessThan(0.25 * JOBS)
})
