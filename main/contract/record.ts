import { z } from 'zod'
import type { Quantity } from '../../geometry/quantities.ts'

/** The parts that the nouns' schemas are made of. Ranges come from the quantity table. */
export const within = (q: Quantity) => z.number().min(q.min).max(q.max)

/** Most characters in a name; more than any label or heading can hold. */
const NAME_LENGTH = 120
/** Most characters in a note. */
export const NOTE_LENGTH = 4000

// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/

/** What a person can have typed: no half characters, and of control characters only those that part lines and columns. */
export const text = z.string().refine((typed) => typed.isWellFormed() && !CONTROL.test(typed), {
  params: { code: 'notText' },
})

export const name = text.trim().min(1).max(NAME_LENGTH)
export const words = text.trim().max(NAME_LENGTH).default('')
export const note = text.trim().max(NOTE_LENGTH).default('')
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
