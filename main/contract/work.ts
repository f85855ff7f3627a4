import { z } from 'zod'
import { quantities } from '../../geometry/quantities.ts'
import { barMeasures } from './entities.ts'
import { day, note, record, utc, within, words } from './record.ts'

/** What is done with tools and wheels from day to day, beside what is measured. */

/** What happens to an edge between two grinds. */
export const happeningKinds = ['honed', 'dropped', 'nicked'] as const

export const happeningDraftSchema = z.strictObject({
  toolId: z.uuid(),
  kind: z.enum(happeningKinds),
  at: utc,
  who: words,
  note,
})
export const happeningSchema = happeningDraftSchema.extend(record)

/** A wheel dressed or only measured, with the bar as it stood: the dresser is guided by the same bar. */
export const dressingDraftSchema = z.strictObject({
  stationId: z.uuid(),
  kind: z.enum(['dressed', 'measured']),
  at: utc,
  /** The wheel afterwards. */
  diameterMm: within(quantities.station.wheelDiameterMm),
  /** Where the bar stood; null: not noted. */
  barMm: within(quantities.aim.barDistanceMm).nullable().default(null),
  barMeasure: z.enum(barMeasures).default('gap'),
  who: words,
  note,
})
export const dressingSchema = dressingDraftSchema.extend(record)

/** One going round to see what is there. */
export const stocktakeDraftSchema = z.strictObject({
  startedAt: utc,
  /** Null: still going on. */
  endedAt: utc.nullable().default(null),
  note,
})
export const stocktakeSchema = stocktakeDraftSchema.extend(record)

/** A tool was seen, at a stocktake or by itself. */
export const sightingDraftSchema = z.strictObject({
  toolId: z.uuid(),
  stocktakeId: z.uuid().nullable().default(null),
  /** Where it was; null: where it belongs. */
  placeId: z.uuid().nullable().default(null),
  at: utc,
  who: words,
})
export const sightingSchema = sightingDraftSchema.extend(record)

/** An iron that is to be ground on a day. */
export const queueEntryDraftSchema = z.strictObject({
  toolId: z.uuid(),
  onDay: day,
  /** Null: not yet. */
  doneAt: utc.nullable().default(null),
})
export const queueEntrySchema = queueEntryDraftSchema.extend(record)

export type Happening = z.output<typeof happeningSchema>
export type Dressing = z.output<typeof dressingSchema>
export type Stocktake = z.output<typeof stocktakeSchema>
export type Sighting = z.output<typeof sightingSchema>
export type QueueEntry = z.output<typeof queueEntrySchema>
