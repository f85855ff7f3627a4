import { z } from 'zod'
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

export type Place = z.output<typeof placeSchema>
export type Person = z.output<typeof personSchema>
export type Loan = z.output<typeof loanSchema>
