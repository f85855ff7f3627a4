import { z } from 'zod'
import { copySchema } from './copies.ts'
import { day, name, note, record, utc } from './record.ts'

/** Where tools belong and who has them. */

/** A room, a cabinet, a drawer: places stand in one another. */
export const placeDraftSchema = z.strictObject({
  name,
  /** The place it is in; null: none. */
  parentId: z.uuid().nullable().default(null),
  note,
})
export const placeSchema = placeDraftSchema.extend(record)

/** Somebody of the workshop. Nothing more is kept of anybody. */
export const personDraftSchema = z.strictObject({
  name,
  apprentice: z.enum(['yes', 'no']).default('no'),
})
export const personSchema = personDraftSchema.extend(record)

/** A tool with somebody, from when to when; a tool has one holder at a time. */
export const loanDraftSchema = z.strictObject({
  toolId: z.uuid(),
  personId: z.uuid(),
  lentAt: utc,
  /** The day it is wanted back; null: any. */
  dueBack: day.nullable().default(null),
  /** Null: still out. */
  returnedAt: utc.nullable().default(null),
  note,
})
export const loanSchema = loanDraftSchema.extend(record)

/** Most tools lent at once. */
const MOST_LENT = 1000

/** Tools given to somebody. */
export const lendSchema = z.strictObject({
  toolIds: z.array(z.uuid()).min(1).max(MOST_LENT),
  /** Who gets them: a name of the workshop's people, or a new one. */
  person: name,
  dueBack: day.nullable().default(null),
})

/** Where the name of somebody stands, beside the record itself. */
export const tracesSchema = z.strictObject({
  /** Lines of logs that say who did it. */
  lines: z.int().min(0),
  loans: z.int().min(0),
  /** Codes of records whose notes hold the name. */
  notes: z.array(z.string()),
  copies: z.array(copySchema),
})

/** How far a name goes when somebody is taken out for good. */
export const purgeSchema = z.strictObject({
  /** Whether the code takes the name's place in notes, too. */
  inNotes: z.boolean(),
  /** Copies that hold the name are kept, or deleted once a new one is made. */
  copies: z.enum(['keep', 'delete']),
})

export type Place = z.output<typeof placeSchema>
export type Person = z.output<typeof personSchema>
export type Loan = z.output<typeof loanSchema>
