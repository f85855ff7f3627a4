import { z } from 'zod'
import { loanSchema } from './people.ts'
import { day, name, words } from './record.ts'
import { happeningKinds } from './work.ts'

/** What is done to one tool after another as they are scanned, filled in once. */
export const errandSchema = z.discriminatedUnion('does', [
  z.strictObject({ does: z.enum(happeningKinds) }),
  /** Each belongs there from now on. */
  z.strictObject({ does: z.literal('place'), placeId: z.uuid() }),
  z.strictObject({ does: z.literal('lend'), person: name, dueBack: day.nullable().default(null) }),
  z.strictObject({ does: z.literal('back') }),
  z.strictObject({ does: z.literal('queue'), onDay: day }),
])

/** Most tools that one call does it to. */
const MOST_TOOLS = 1000

export const errandInputSchema = z.strictObject({
  toolIds: z.array(z.uuid()).min(1).max(MOST_TOOLS),
  errand: errandSchema,
  /** Who noted it; empty: whoever is known to have been at the bench last. */
  who: words,
})

/** A loan with the name of whoever had the tool. */
export const namedLoanSchema = loanSchema.extend({ person: z.string() })

export type Errand = z.output<typeof errandSchema>
export type NamedLoan = z.output<typeof namedLoanSchema>
