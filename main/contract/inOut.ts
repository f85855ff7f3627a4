import { z } from 'zod'

/** What leaves the rack as a file and comes in from one. */

/** The nouns that are taken out, each after those it refers to. */
export const inOutNouns = [
  'purpose',
  'ownField',
  'person',
  'place',
  'station',
  'fixture',
  'tool',
  'job',
  'benchLog',
  'happening',
  'dressing',
  'loan',
  'stocktake',
  'sighting',
  'queueEntry',
  'photo',
  'keptFilter',
  'toolTemplate',
] as const
export type InOutNoun = (typeof inOutNouns)[number]

/** Those that fit in a table; a picture does not. */
export const tableNouns = inOutNouns.filter((noun) => noun !== 'photo')

/** A table for other programs, our own document, or that document with the pictures in one zip. */
export const outForms = ['csv', 'json', 'bundle'] as const

/** The whole rack, one noun of it, or with `toolId` one tool with its log and pictures. A table holds one noun. */
export const takeOutSchema = z.strictObject({
  what: z.enum(['rack', ...inOutNouns]),
  toolId: z.uuid().optional(),
  form: z.enum(outForms),
})

/** What parts the cells of a table. */
export const delimiters = [',', ';', '\t'] as const

const lengthUnits = ['mm', 'inch', 'thou'] as const
/** What a column of a table is taken for; null: left out. */
const columnUseSchema = z.strictObject({ key: z.string().max(200).nullable(), lengthUnit: z.enum(lengthUnits) })
/** More columns than any table of tools has. */
const MOST_COLUMNS = 500

/** A file that was handed in, and how its table is to be read; null: as it looks. */
export const offerSchema = z.strictObject({
  blobId: z.uuid(),
  fileName: z.string().max(1000).default(''),
  noun: z.enum(inOutNouns).nullable().default(null),
  delimiter: z.enum(delimiters).nullable().default(null),
  columns: z.array(columnUseSchema).max(MOST_COLUMNS).nullable().default(null),
})

const countsSchema = z.strictObject({
  noun: z.enum(inOutNouns),
  added: z.int(),
  changed: z.int(),
  /** Those that lie in the scrap box and are had back. */
  back: z.int(),
  same: z.int(),
  faulty: z.int(),
})

const faultSchema = z.strictObject({
  noun: z.enum(inOutNouns),
  /** Line of a table, its head being 1; place in the list of a document, from 1. */
  row: z.int(),
  /** Head of the column, or name of the entry; empty: the whole row. */
  column: z.string(),
  code: z.string(),
  params: z.record(z.string(), z.union([z.string(), z.number()])),
})

/** What bringing a file in would do. */
export const lookSchema = z.strictObject({
  form: z.enum(outForms),
  /** Null: several nouns. */
  noun: z.enum(inOutNouns).nullable(),
  table: z
    .strictObject({
      delimiter: z.enum(delimiters),
      columns: z.array(
        z.strictObject({ header: z.string(), ...columnUseSchema.shape, isLength: z.boolean(), hasKey: z.boolean() }),
      ),
      /** Every entry that a column may be taken for. */
      keys: z.array(z.strictObject({ key: z.string(), name: z.string(), isLength: z.boolean() })),
      /** The first rows as they stand. */
      rows: z.array(z.strictObject({ row: z.int(), cells: z.array(z.string()) })),
      /** Whether a row is known again by its code or id, so that bringing it in twice changes nothing. */
      keyed: z.boolean(),
    })
    .nullable(),
  counts: z.array(countsSchema),
  faults: z.array(faultSchema),
  /** How many faults there are in all; `faults` tells the first. */
  faultCount: z.int(),
})

export const bringInSchema = offerSchema.extend({
  /** Whether faulty rows are left out; otherwise nothing is written while there is one. */
  leaveOut: z.boolean().default(false),
})

export const broughtSchema = z.strictObject({ counts: z.array(countsSchema), changeId: z.int() })

export type TakeOut = z.output<typeof takeOutSchema>
export type Offer = z.output<typeof offerSchema>
export type Counts = z.output<typeof countsSchema>
export type Fault = z.output<typeof faultSchema>
export type Look = z.output<typeof lookSchema>
export type ColumnUse = z.output<typeof columnUseSchema>
