import { z } from 'zod'
import { name, note, record, text, utc, words } from './record.ts'

/** What a workshop adds to its rack: pictures, purposes, fields of its own, filters and patterns that it keeps. */

/** Kinds of picture that are taken in; both are shown by every window without further help. */
export const photoTypes = ['image/jpeg', 'image/png', 'image/webp'] as const
/** Largest side of a picture (px). */
const PHOTO_SIDE_PX = 20_000

/** A picture of a tool; its bytes lie apart, by their hash. */
export const photoDraftSchema = z.strictObject({
  toolId: z.uuid(),
  mediaType: z.enum(photoTypes),
  widthPx: z.int().min(1).max(PHOTO_SIDE_PX),
  heightPx: z.int().min(1).max(PHOTO_SIDE_PX),
  /** SHA-256 of the bytes, in hexadecimal. */
  hash: z.string().regex(/^[0-9a-f]{64}$/),
  at: utc,
  caption: words,
})
/** Most bytes of one picture; windows make them smaller before they hand them in. */
export const MOST_PHOTO_BYTES = 12 * 1024 * 1024

/** A picture that was handed in as a file; what kind it is, its own bytes tell. */
export const newPhotoSchema = photoDraftSchema
  .pick({ toolId: true, widthPx: true, heightPx: true, caption: true })
  .extend({ blobId: z.uuid() })
export const photoSchema = photoDraftSchema.extend(record)

/** What an iron is ground for; each iron says by which curve. */
export const purposeDraftSchema = z.strictObject({ name, note })
export const purposeSchema = purposeDraftSchema.extend(record)

/** What a field of the workshop's own holds. */
export const ownFieldKinds = ['words', 'figure', 'day', 'choice'] as const
/** Most choices of one field. */
const MOST_CHOICES = 40

export const ownFieldDraftSchema = z.strictObject({
  name,
  kind: z.enum(ownFieldKinds),
  /** Unit of a figure, as it is written behind it. */
  unit: words,
  choices: z.array(name).max(MOST_CHOICES).default([]),
})
export const ownFieldSchema = ownFieldDraftSchema.extend(record)

/** Most letters of a kept filter or pattern, written as JSON. */
const MOST_JSON_LETTERS = 20_000
const json = text.max(MOST_JSON_LETTERS)

/** A way of looking at the rack that is kept: what is asked for, as JSON. */
export const keptFilterDraftSchema = z.strictObject({ name, asked: json })
export const keptFilterSchema = keptFilterDraftSchema.extend(record)

/** What a new tool of some kind begins with: part of a tool, as JSON. */
export const toolTemplateDraftSchema = z.strictObject({ name, draft: json })
export const toolTemplateSchema = toolTemplateDraftSchema.extend(record)

export type Photo = z.output<typeof photoSchema>
export type NewPhoto = z.output<typeof newPhotoSchema>
export type Purpose = z.output<typeof purposeSchema>
export type OwnField = z.output<typeof ownFieldSchema>
export type KeptFilter = z.output<typeof keptFilterSchema>
export type ToolTemplate = z.output<typeof toolTemplateSchema>
