import type { Change, Lesson } from './lesson.ts'

/** Next number of a linear congruence modulo 2^31 (a 1103515245, c 12345: ISO C's own example of rand), exact in integers. */
const next = (seed: number): number => Number((BigInt(seed) * 1103515245n + 12345n) % 2147483648n)

/** Low bits of such numbers repeat soon; the choice is made by the high ones. */
const LOW_BITS = 65_536

/** @returns the varied places with the values that belong to a seed; for seed 0 none, so that all is as the lesson has it */
export const variation = ({ varied }: Pick<Lesson, 'varied'>, seed: number): Change => {
  if (seed === 0) return {}
  let now = next(next(seed))
  return Object.fromEntries(
    varied.flatMap(({ places, values }) => {
      now = next(now)
      const value = values[Math.floor(now / LOW_BITS) % values.length] as number
      return places.map((place) => [place, value])
    }),
  )
}
