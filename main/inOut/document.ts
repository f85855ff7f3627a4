import { z } from 'zod'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { type InOutNoun, inOutNouns } from '../contract/inOut.ts'
import { type AnyRecord, allForms, draftOf, formOf, type NounForm } from './nouns.ts'
import type { Offered, OfferedRow } from './offered.ts'

/** What the document says that it is. */
const FORM = 'camberwright rack'
/** Raised when an older program could no longer read what is written. */
const FORM_VERSION = 1

/** Records by noun, each after those it refers to. */
export type Gathered = readonly { readonly form: NounForm; readonly records: readonly AnyRecord[] }[]

/** Id and code first, then what is said of the record, in the schema's order; how often it was changed is the rack's own affair. */
const entryOf = (form: NounForm, record: AnyRecord): string =>
  JSON.stringify({ id: record.id, code: record.code, ...draftOf(form, record) })

const listOf = ({ form, records }: Gathered[number]): string =>
  `    "${form.noun}": [\n${records.map((record) => `      ${entryOf(form, record)}`).join(',\n')}\n    ]`

/** @returns the document: JSON, a record a line, so that two of them can be compared line by line */
export const writeDocument = (gathered: Gathered): string => {
  const lists = gathered.filter(({ records }) => records.length > 0).map(listOf)
  return `{\n  "form": "${FORM}",\n  "formVersion": ${FORM_VERSION},\n  "records": {\n${lists.join(',\n')}\n  }\n}\n`
}

const idSchema = z.uuid().describe('Tells the record; without it a new one is made, or the one of this code.')
const codeSchema = z.string().min(1).max(12).describe('Short code of the record; a taken one gives way to the next.')

const recordSchemaOf = ({ draft }: NounForm) =>
  z.strictObject({ id: idSchema.optional(), code: codeSchema.optional(), ...draft.shape })

/** The whole document, for whoever writes one: the reader below judges it record by record. */
const documentSchema = () =>
  z.strictObject({
    form: z.literal(FORM),
    formVersion: z.literal(FORM_VERSION),
    records: z.strictObject(
      Object.fromEntries(allForms.map((form) => [form.noun, z.array(recordSchemaOf(form)).optional()])),
    ),
  })

/** @returns the document's description as JSON Schema */
export const documentJsonSchema = () => z.toJSONSchema(documentSchema(), { io: 'input' })

/** The outside of a document; what is in the lists is looked at record by record. */
const outsideSchema = z.looseObject({
  form: z.literal(FORM),
  formVersion: z.int().min(1),
  records: z.record(z.string(), z.array(z.unknown())),
})

const textOf = (value: unknown): string | null => (typeof value === 'string' ? value : null)

const rowOf = (record: unknown, i: number): OfferedRow => {
  const row = { row: i + 1, id: null, code: null, says: {}, problems: [] }
  if (typeof record !== 'object' || record === null || Array.isArray(record))
    return { ...row, problems: [problem('wrongType', '', { expected: 'object' })] }
  // A version tells how often another rack changed the record.
  const { id, code, version: _, ...says } = record as Record<string, unknown>
  return { ...row, id: textOf(id), code: textOf(code), says }
}

const offeredOf = (noun: InOutNoun, list: readonly unknown[]): Offered => ({
  noun: formOf(noun).noun,
  rows: list.map(rowOf),
  keyedBy: 'id',
  heads: new Map(),
})

const parsed = (text: string): unknown => {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}

/** @returns what a document offers, noun after noun; or `notARackFile`, `rackFileTooNew`, `unknownField` */
export const readDocument = (text: string): Result<readonly Offered[]> => {
  const outside = outsideSchema.safeParse(parsed(text))
  if (!outside.success) return failed(problem('notARackFile'))
  const { formVersion, records } = outside.data
  if (formVersion > FORM_VERSION) return failed(problem('rackFileTooNew', '', { version: formVersion }))
  const stranger = Object.keys(records).find((noun) => !(inOutNouns as readonly string[]).includes(noun))
  if (stranger !== undefined) return failed(problem('unknownField', 'records', { key: stranger }))
  return ok(inOutNouns.flatMap((noun) => (records[noun] ? [offeredOf(noun, records[noun])] : [])))
}
