import { z } from 'zod'
import { labelNouns } from './codes.ts'
import { labelSheetSchema } from './labelSheets.ts'

/** Most labels made at once: more than any day's work, and a few seconds of drawing. */
export const MOST_LABELS = 2000

/** What a label is for. */
export const labelItemSchema = z.strictObject({ noun: z.enum(labelNouns), id: z.uuid() })
export type LabelItem = z.output<typeof labelItemSchema>

/** Labels to be made: for what, on which sheet, from which position of a started one; outlines are for a trial on plain paper. */
export const labelOrderSchema = z.strictObject({
  items: z.array(labelItemSchema).min(1).max(MOST_LABELS),
  sheet: labelSheetSchema,
  /** 1: the sheet's first label. */
  first: z.int().min(1),
  outlines: z.boolean().default(false),
})

/** What a code stands for, in the rack or in the scrap box. */
export const foundByCodeSchema = z.strictObject({
  noun: z.enum(labelNouns),
  id: z.uuid(),
  code: z.string(),
  name: z.string(),
  removed: z.boolean(),
})
export type FoundByCode = z.output<typeof foundByCodeSchema>
