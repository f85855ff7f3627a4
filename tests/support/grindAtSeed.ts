import fc from 'fast-check'
import { grindOutcome } from './grindFault.ts'
import { randomJobs } from './randomJobs.ts'

/** One random job of any kind, ground. @returns what no grind may do, or null; a named refusal is no fault */
export const faultWithRandomJob = (seed: number): string | null => {
  const [job] = fc.sample(randomJobs, { seed, numRuns: 1 })
  return job === undefined ? null : grindOutcome(job).fault
}
