import { describe, expect, it } from 'vitest'
import { parseJobText } from '../../geometry/parseJob.ts'
import { damagedJobText, faultWithDamagedJob } from '../support/damagedJob.ts'

/** Enough to damage every field several times; `npm run test:long` tries many more. */
const SEEDS = 100

const seeds = Array.from({ length: SEEDS }, (_, seed) => seed)

describe(`jobs damaged at random, seeds 0 to ${SEEDS - 1}`, () => {
  it('are each refused in words or answered in whole figures', () => {
    expect(seeds.map(faultWithDamagedJob).filter((fault) => fault !== null)).toEqual([])
  })

  it('are some of them refused and some of them sound', () => {
    const refused = seeds.filter((seed) => !parseJobText(damagedJobText(seed)).ok).length
    expect(refused).toBeGreaterThan(SEEDS / 4)
    expect(refused).toBeLessThan(SEEDS)
  })
})
