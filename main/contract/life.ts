import { z } from 'zod'
import { day } from './record.ts'

/** What is left of an iron, by its length and what its grinds took. */
export const lifeSchema = z.strictObject({
  grinds: z.int().min(0),
  /** Nineteen of twenty irons should last at least and at most so many. */
  from: z.int().min(0),
  to: z.int().min(0),
  perGrindMm: z.number().min(0),
  /** Noted at the bench, or said by the model for want of notes. */
  by: z.enum(['bench', 'model']),
  /** Grinds that it rests on. */
  counted: z.int().min(1),
  /** When the length was written down, where that is known, and what grinds have taken since. */
  lengthOn: day.nullable(),
  takenSinceMm: z.number().min(0),
})

export type Life = z.output<typeof lifeSchema>
