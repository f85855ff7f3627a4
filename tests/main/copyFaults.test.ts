import { describe, expect, it } from 'vitest'
import { copyOperations, faultWithCopies } from '../support/copyFault.ts'

/** The other ways to fail are among the long counts (`copyFaults`). */
const ways = [
  { what: 'file', how: 'before' },
  { what: 'statement', how: 'before' },
] as const

/** Fails the first call, the second, and so on, until the operation goes through untouched. */
describe.each(ways)('with the n-th $what call failing, $how', (way) => {
  it.each(Object.keys(copyOperations) as (keyof typeof copyOperations)[])(
    '%s leaves old or new data whole, says which, and leaves nothing lying about, for every n',
    async (operation) => {
      for (let nth = 1; ; nth += 1) {
        const { fault, reached } = await faultWithCopies(operation, { ...way, nth })
        expect(fault).toBeNull()
        if (reached) continue
        expect(nth).toBeGreaterThan(3)
        return
      }
    },
  )
})
