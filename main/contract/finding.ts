import { z } from 'zod'
import { quantities } from '../../geometry/quantities.ts'
import { conditions, dueReasons, toolKinds, toolLineSchema } from './entities.ts'
import { day, within } from './record.ts'

/** How tools of the rack are asked for, and what is answered. */

/** Columns that the rack can be sorted by. */
export const sortColumns = [
  'code',
  'name',
  'kind',
  'widthMm',
  'seatAngleDeg',
  'bevelAngleDeg',
  'projectionMm',
  'reliefMm',
  'lastGroundAt',
  'honings',
  'place',
  'due',
  'maker',
  'steel',
  'condition',
  'lengthLeftMm',
  'lastSeenAt',
] as const

/** Most values of one condition; a window offers far fewer. */
const MOST_VALUES = 50

/** Conditions that must all hold; one left out holds for every tool. */
export const filterSchema = z.strictObject({
  kinds: z.array(z.enum(toolKinds)).max(MOST_VALUES).optional(),
  /** This place, with everything in it. */
  placeId: z.uuid().optional(),
  holderId: z.uuid().optional(),
  lent: z.enum(['lent', 'overdue', 'here']).optional(),
  due: z.enum(['any', ...dueReasons]).optional(),
  /** By the log: ground or honed, not harmed since, not due, not put by, and at home. */
  sharp: z.literal('yes').optional(),
  /** Irons that have a curve for this purpose. */
  purposeId: z.uuid().optional(),
  conditions: z.array(z.enum(conditions)).max(MOST_VALUES).optional(),
  edge: z.enum(['straight', 'curved']).optional(),
  bevelSide: z.enum(['up', 'down']).optional(),
  widthFromMm: within(quantities.blade.widthMm).optional(),
  widthToMm: within(quantities.blade.widthMm).optional(),
  /** Not seen since the beginning of this day. */
  notSeenSince: day.optional(),
  /** A field of the workshop's own that says this. */
  own: z.strictObject({ fieldId: z.uuid(), value: z.union([z.string(), z.number()]) }).optional(),
})

/** Most tools in one answer; a window shows some dozens. */
export const MOST_LINES = 500
/** Beyond this many found by words, it is only told that there are more: nobody reads them, and counting costs. */
export const MOST_COUNTED = 1000

export const askedSchema = z.strictObject({
  /** Words that must each begin a word of the tool, its kind, its place, its holder, its own fields or its log. */
  search: z.string().max(200).default(''),
  filter: filterSchema.default({}),
  sort: z.enum(sortColumns).default('code'),
  descending: z.boolean().default(false),
  offset: z.int().min(0).default(0),
  limit: z.int().min(0).max(MOST_LINES).default(MOST_LINES),
})

export const foundSchema = z.strictObject({
  tools: z.array(toolLineSchema),
  /** How many there are in all; with words searched for, never told beyond `MOST_COUNTED`. */
  total: z.int().min(0),
  more: z.boolean(),
})

/** How the rack stands. */
export const standingSchema = z.strictObject({
  tools: z.int(),
  curved: z.int(),
  lent: z.int(),
  overdue: z.int(),
  due: z.int(),
})

export type Filter = z.output<typeof filterSchema>
export type Asked = z.output<typeof askedSchema>
export type Found = z.output<typeof foundSchema>
export type SortColumn = (typeof sortColumns)[number]
export type Standing = z.output<typeof standingSchema>
