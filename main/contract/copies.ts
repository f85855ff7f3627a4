import { z } from 'zod'

/** A copy of the open data file, as a list shows it. */
export const copySchema = z.strictObject({
  name: z.string(),
  kind: z.enum(['kept', 'beforeUpdate', 'beforeGoingBack']),
  at: z.iso.datetime(),
  bytes: z.int().min(0),
})

/** What a copy holds. */
export const copyContentsSchema = z.strictObject({
  tools: z.int().min(0),
  logLines: z.int().min(0),
  changedAt: z.string().nullable(),
})

/** A copy is named by its file; anything that is not in the list is refused, so no name leads out of the folder. */
export const copyNameSchema = z.strictObject({ name: z.string().min(1).max(200) })
