import { z } from 'zod'
import { barMeasures, toolLineSchema } from './entities.ts'
import { day } from './record.ts'
import { queueEntrySchema } from './work.ts'

/** A day's work at the grinder: which irons, in which order, and why in that one. */

/** What an iron is to the wheel's face: straight ones want it true, roughing ones wear it hollow. */
export const faces = ['straight', 'curved', 'rough'] as const

/** Most irons put on a day's queue at once; nobody grinds so many. */
const MOST_AT_ONCE = 1000

export const enqueueSchema = z.strictObject({ toolIds: z.array(z.uuid()).min(1).max(MOST_AT_ONCE), onDay: day })

/** Why an iron stands where it does in the queue; words under `day:why`. */
const whySchema = z.strictObject({ code: z.string(), params: z.record(z.string(), z.union([z.string(), z.number()])) })

const named = z.strictObject({ id: z.uuid(), code: z.string(), name: z.string() })

/** How bar and stops are set for an iron. */
const settingSchema = z.strictObject({
  station: named,
  fixture: named,
  /** Axle to bar's axis, and the same as it is measured at this station. */
  barDistanceMm: z.number(),
  barMm: z.number(),
  barMeasure: z.enum(barMeasures),
  projectionMm: z.number(),
  /** Null: nothing to set, or not known. */
  freePlay: z.strictObject({ leftMm: z.number(), rightMm: z.number() }).nullable(),
  turns: z.strictObject({ left: z.number(), right: z.number() }).nullable(),
  /** How often the stops are set anew during the grind; 1: once. */
  settings: z.int().min(1),
  /** From the job in hand, or reckoned from tool, station and fixture. */
  from: z.enum(['job', 'tool']),
})

/** An iron of a day's queue, in its order. */
export const queueLineSchema = z.strictObject({
  entry: queueEntrySchema,
  tool: toolLineSchema,
  face: z.enum(faces),
  setting: settingSchema.nullable(),
  /** Why it cannot be set up; null: it can. */
  problem: whySchema.extend({ path: z.string() }).nullable(),
  why: z.array(whySchema),
})

export const dayQueueSchema = z.strictObject({
  lines: z.array(queueLineSchema),
  /** Irons of earlier days that were not ground. */
  leftOver: z.int().min(0),
})

export type Face = (typeof faces)[number]
export type Why = z.output<typeof whySchema>
export type DaySetting = z.output<typeof settingSchema>
export type QueueLine = z.output<typeof queueLineSchema>
export type DayQueue = z.output<typeof dayQueueSchema>
