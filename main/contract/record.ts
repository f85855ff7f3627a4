import { z } from 'zod'
import type { Quantity } from '../../geometry/quantities.ts'

/** The parts that the nouns' schemas are made of. Ranges come from the quantity table. */
export const within = (q: Quantity) => z.number().min(q.min).max(q.max)

/** Most characters in a name; more than any label or heading can hold. */
const NAME_LENGTH = 120
/** Most characters in a note. */
export const NOTE_LENGTH = 4000

export const name = z.string().trim().min(1).max(NAME_LENGTH)
export const words = z.string().trim().max(NAME_LENGTH).default('')
export const note = z.string().trim().max(NOTE_LENGTH).default('')
/** A moment, UTC. */
export const utc = z.iso.datetime()
/** A day as the workshop's calendar has it. */
export const day = z.iso.date()

/** What every record carries. `code` is short, printed on labels and cards, and never changes or comes again. */
export const record = {
  id: z.uuid(),
  code: z.string().min(1).max(12),
  version: z.int().min(1),
}
