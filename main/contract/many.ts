import { z } from 'zod'
import { toolDraftSchema } from './entities.ts'
import { filterSchema } from './finding.ts'
import { note } from './record.ts'

/** Many tools changed at once. */

/** Most tools named one by one; more are named by what finds them. */
const MOST_NAMED = 10_000

/** Which tools: those named, or all that are found but for some. */
export const whichSchema = z.union([
  z.strictObject({ ids: z.array(z.uuid()).min(1).max(MOST_NAMED) }),
  z.strictObject({
    search: z.string().max(200),
    filter: filterSchema,
    except: z.array(z.uuid()).max(MOST_NAMED).default([]),
  }),
])

/** What of a tool may be set for many at once; the rest tells one iron from another. */
export const manyKeys = [
  'placeId',
  'condition',
  'kind',
  'maker',
  'steel',
  'temperLimitC',
  'seatAngleDeg',
  'bevelSide',
  'bevelAngleDeg',
  'honedBevelDeg',
  'projectionMm',
  'reliefMm',
  'shavingDepthMm',
  'dueDays',
  'dueHonings',
] as const
type ManyKey = (typeof manyKeys)[number]

type Bare<S> = S extends z.ZodDefault<infer Inner> ? Inner : S
type Shape = typeof toolDraftSchema.shape

/** What a tool's field asks of its value, without what it takes where nothing is said: nothing said changes nothing here. */
const bare = (key: ManyKey): z.ZodType => {
  const field = toolDraftSchema.shape[key] as z.ZodType
  return (field instanceof z.ZodDefault ? (field.unwrap() as z.ZodType) : field).optional()
}

const shape = Object.fromEntries(manyKeys.map((key) => [key, bare(key)])) as {
  readonly [K in ManyKey]: z.ZodOptional<Bare<Shape[K]>>
}

const ownValue = toolDraftSchema.shape.own.unwrap().valueType

/** Fields left out stay as they are. */
export const setSchema = z.strictObject({
  ...shape,
  /** Entries of the workshop's own fields, by the field's id; null takes one away. */
  own: z.record(z.uuid(), ownValue.nullable()).optional(),
  /** Written under whatever the note says already. */
  noteAdded: note.unwrap().optional(),
})

/** What a change of many would do. */
export const outlookSchema = z.strictObject({ tools: z.int().min(0), changed: z.int().min(0) })

export type Outlook = z.output<typeof outlookSchema>
export type Which = z.output<typeof whichSchema>
export type SetMany = z.output<typeof setSchema>
