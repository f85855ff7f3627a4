import { z } from 'zod'
import { nouns } from './entities.ts'

/** What events speak of: the nouns, and what is known of those who learn, which is no record. */
export const topics = [...nouns, 'progress'] as const
export type Topic = (typeof topics)[number]

/** What a host sends unasked: how far a task is, which records of a noun changed, or which file could not be written. */
export const eventSchema = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('progress'), callId: z.string(), done: z.number().min(0).max(1) }),
  z.strictObject({ type: z.literal('changed'), noun: z.enum(topics), ids: z.array(z.string()) }),
  z.strictObject({ type: z.literal('unwritten'), file: z.string() }),
])
export type HostEvent = z.output<typeof eventSchema>
