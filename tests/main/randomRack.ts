import { createHash } from 'node:crypto'
import fc from 'fast-check'
import type { z } from 'zod'
import { codeOfNoun } from '../../main/contract/codes.ts'
import { type InOutNoun, inOutNouns } from '../../main/contract/inOut.ts'
import { writeBundle } from '../../main/inOut/bundle.ts'
import type { Column } from '../../main/inOut/columns.ts'
import { formOf } from '../../main/inOut/nouns.ts'
import { photoPath } from '../../main/photos/photoFiles.ts'
import { exampleJob } from '../geometry/example.ts'

/** Invented racks as our own document has them, every entry of every noun with whatever its schema takes. */
type Record_ = Readonly<Record<string, unknown>>
export type RandomRack = Readonly<Partial<Record<InOutNoun, readonly Record_[]>>>

/** What text is made of: letters, and all that a table, a spreadsheet or a page could take for its own. */
const scraps = [
  ...['iron', 'É', 'שלום', 'م', '\u202eabc', '木', '🪵', "'", "''", '"', '""', ',', ';', '\t', '\r\n', '\n', '\r', ' '],
  ...['=1+1', '+1', '-1', '@x', '<script>alert(1)</script>', '\\', '/', '{}', '0', '07', '1,5', '\ufeff'],
]

const text = (most: number, least = 0): fc.Arbitrary<string> =>
  fc
    .array(fc.constantFrom(...scraps), { maxLength: 6 })
    .map((parts) => parts.join('').trim().slice(0, most).toWellFormed().trim())
    .map((made) => (made.length < least ? 'x' : made))

const moment = fc.integer({ min: 1.6e12, max: 1.8e12 }).map((ms) => new Date(ms).toISOString())

const bare = (schema: z.ZodType): z.ZodType => {
  const inner = (schema as unknown as { def: { innerType?: z.ZodType } }).def.innerType
  return inner ? bare(inner) : schema
}

const figure = (schema: z.ZodType): fc.Arbitrary<number> => {
  const { minValue, maxValue, isInt, format } = bare(schema) as z.ZodNumber & { format: string | null }
  const [min, max] = [Math.max(minValue ?? 0, -1e6), Math.min(maxValue ?? 100, 1e6)]
  if (isInt || format === 'safeint') return fc.integer({ min: Math.ceil(min), max: Math.floor(max) })
  return fc.double({ min, max, noNaN: true }).map((value) => (Object.is(value, -0) ? 0 : value))
}

const some = <T>(list: readonly T[]): fc.Arbitrary<T> => fc.constantFrom(...list)

type Ids = ReadonlyMap<InOutNoun, readonly string[]>

/** Entries made of parts, each by its own rule. */
const parts = (noun: InOutNoun, key: string, ids: Ids): fc.Arbitrary<unknown> => {
  const purposes = ids.get('purpose') ?? []
  const fields = ids.get('ownField') ?? []
  if (key === 'curves')
    return fc.array(
      fc.record({
        purposeId: some(purposes),
        reliefMm: fc.double({ min: 0, max: 12, noNaN: true }),
        shavingDepthMm: fc.constant(0.1),
      }),
      { maxLength: 2 },
    )
  if (key === 'own') return fc.dictionary(some(fields), fc.oneof(text(100), fc.integer()), { maxKeys: 2 })
  if (key === 'choices') return fc.array(text(50, 1), { maxLength: 3 })
  if (key === 'points')
    return fc.array(
      fc.record({ uMm: fc.constantFrom(-20, 0, 20.5), gapMm: fc.double({ min: 0, max: 1, noNaN: true }) }),
      { maxLength: 3 },
    )
  if (key === 'document') return fc.constant(exampleJob())
  if (key === 'toolAim')
    return fc.constant({ bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.1, shavingDepthMm: 0.08 })
  if (key === 'job' || key === 'report')
    return fc.dictionary(
      text(10, 1).filter((name) => name !== '__proto__'),
      fc.oneof(
        text(20),
        fc.double({ noNaN: true, noDefaultInfinity: true }).map((v) => v + 0),
      ),
      { maxKeys: 3 },
    )
  throw new Error(`${noun}.${key}: say how it is made up`)
}

/** One pixel and a number in a PNG's clothes. */
export const pictureOf = (number: number): Uint8Array =>
  new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, number & 255, number >> 8])

export const hashOfPicture = (number: number): string => createHash('sha256').update(pictureOf(number)).digest('hex')

/** How many pictures there are to choose from. */
const PICTURES = 3

const value = (noun: InOutNoun, column: Column, schema: z.ZodType, ids: Ids, nth: number): fc.Arbitrary<unknown> => {
  const { holds, key } = column
  const plain = (): fc.Arbitrary<unknown> => {
    if (noun === 'photo' && key === 'mediaType') return fc.constant('image/png')
    if (noun === 'photo' && key === 'hash') return fc.nat(PICTURES - 1).map(hashOfPicture)
    if (holds.kind === 'figure') return figure(schema)
    if (holds.kind === 'choice') return some(holds.options)
    if (holds.kind === 'moment') return moment
    if (holds.kind === 'day') return moment.map((at) => at.slice(0, 10))
    if (holds.kind === 'parts') return parts(noun, key, ids)
    if (holds.kind === 'words') return text(100, 1)
    // A place stands in one before it; of what a tool has only once, the nth is the nth tool's.
    const of = ids.get(holds.noun) ?? []
    if (key === 'parentId') return some(of.slice(Math.max(0, nth - 1), nth))
    return formOf(noun).alone?.keys.includes(key) ? fc.constant(of[nth]) : some(of)
  }
  if (key === 'parentId' && (nth === 0 || nth > 4)) return fc.constant(null)
  return column.nullable
    ? fc.oneof({ weight: 1, arbitrary: fc.constant(null) }, { weight: 3, arbitrary: plain() })
    : plain()
}

const record = (noun: InOutNoun, nth: number, ids: Ids): fc.Arbitrary<Record_> => {
  const { columns, draft } = formOf(noun)
  const code = codeOfNoun(noun, noun === 'tool' ? `${nth * 3 + 1}` : `${letters[noun]}${nth * 3 + 1}`)
  return fc.record({
    id: fc.constant(ids.get(noun)?.[nth]),
    code: fc.constant(code),
    ...Object.fromEntries(
      columns.map((column) => [column.key, value(noun, column, draft.shape[column.key] as z.ZodType, ids, nth)]),
    ),
  })
}

const letters: Readonly<Record<string, string>> = {
  ...{ station: 'S', fixture: 'F', job: 'J', benchLog: 'L', place: 'P', person: 'N', loan: 'B', happening: 'H' },
  ...{ dressing: 'D', photo: 'I', purpose: 'U', ownField: 'O', keptFilter: 'K', toolTemplate: 'T', stocktake: 'C' },
  ...{ sighting: 'V', queueEntry: 'Q' },
}

/** Records of each noun: enough that each is referred to, few enough that hundreds of racks are made in a second. */
const OF_EACH = 3

const idsOf = (noun: InOutNoun): readonly string[] =>
  Array.from({ length: OF_EACH }, (_, i) => {
    const at = String(inOutNouns.indexOf(noun) * 100 + i).padStart(12, '0')
    return `bbbbbbbb-0000-4000-8000-${at}`
  })

const ids: Ids = new Map(inOutNouns.map((noun) => [noun, idsOf(noun)]))

export const randomRack: fc.Arbitrary<RandomRack> = fc.record(
  Object.fromEntries(
    inOutNouns.map((noun) => [noun, fc.tuple(...idsOf(noun).map((_, nth) => record(noun, nth, ids)))]),
  ) as unknown as Record<InOutNoun, fc.Arbitrary<readonly Record_[]>>,
)

/** @returns a rack as our own document */
export const documentOf = (records: RandomRack): string =>
  JSON.stringify({ form: 'camberwright rack', formVersion: 1, records })

const photos = new Map(
  Array.from({ length: PICTURES }, (_, i) => [photoPath(hashOfPicture(i), 'image/png'), pictureOf(i)]),
)

/** @returns a rack as our own document, with its pictures */
export const bundleOf = (rack: RandomRack): Uint8Array => writeBundle(documentOf(rack), photos)
