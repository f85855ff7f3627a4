import { z } from 'zod'
import { nouns } from './entities.ts'

/** What events speak of: the nouns, and what is known of those who learn, which is no record. */
export const topics = [...nouns, 'progress'] as const
export type Topic = (typeof topics)[number]

/**
 * What a host sends unasked: how far a task is, which records of a noun changed, which file could not
 * be written, or what the system's menu and files ask of the page.
 */
export const eventSchema = z.discriminatedUnion('type', [
  z.strictObject({ type: z.literal('progress'), callId: z.string(), done: z.number().min(0).max(1) }),
  z.strictObject({ type: z.literal('changed'), noun: z.enum(topics), ids: z.array(z.string()) }),
  z.strictObject({ type: z.literal('unwritten'), file: z.string() }),
  /** A file waits to be taken by `file.take`. */
  z.strictObject({ type: z.literal('offered') }),
  /** The menu's word for what the page can do; its names are those of its shortcuts. */
  z.strictObject({ type: z.literal('act'), action: z.string().max(60) }),
  /** The class view stood on a screen that is gone; its window was brought back to one that is there. */
  z.strictObject({ type: z.literal('classViewBack') }),
])
export type HostEvent = z.output<typeof eventSchema>
