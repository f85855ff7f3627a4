import { z } from 'zod'
import { toolLineSchema } from './entities.ts'
import { words } from './record.ts'
import { sightingSchema, stocktakeSchema } from './work.ts'

/** Going round to see what is there. */

/** Most tools listed of those seen, newest first, and of those missing; all of them are counted. */
export const MOST_SEEN = 100
export const MOST_MISSING = 500

/** @param placeId a place with all in it; null: the whole rack */
export const beginStocktakeSchema = z.strictObject({ placeId: z.uuid().nullable() })

export const seeSchema = z.strictObject({
  stocktakeId: z.uuid(),
  toolId: z.uuid(),
  /** Where one stands; null: not said, so it is taken to be where it belongs. */
  placeId: z.uuid().nullable(),
  who: words,
})

const seenSchema = z.strictObject({
  sighting: sightingSchema,
  tool: toolLineSchema,
  /** The place where it was found though it belongs elsewhere, by its names; empty: where it belongs. */
  foundIn: z.string(),
})

/** A stocktake as it stands, or as it ended. */
export const stocktakeStandingSchema = z.strictObject({
  stocktake: stocktakeSchema,
  /** The place it goes round in, by its names; empty: the whole rack. */
  within: z.string(),
  /** Tools that should be there: those of the place that nobody has. */
  expected: z.int().min(0),
  lent: z.int().min(0),
  /** Newest first. */
  seen: z.array(seenSchema),
  seenTotal: z.int().min(0),
  /** Not seen since it began, by place; one that somebody has is not missing. */
  missing: z.array(toolLineSchema),
  missingTotal: z.int().min(0),
})

export type StocktakeStanding = z.output<typeof stocktakeStandingSchema>
export type SeenTool = z.output<typeof seenSchema>
