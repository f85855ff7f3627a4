import type { z } from 'zod'
import type { Unit } from '../../geometry/quantities.ts'
import type { InOutNoun } from '../contract/inOut.ts'

/** What the cells of a column hold. */
export type Holds =
  | { readonly kind: 'words' }
  | { readonly kind: 'figure'; readonly unit: Unit }
  | { readonly kind: 'choice'; readonly options: readonly string[] }
  | { readonly kind: 'moment' }
  | { readonly kind: 'day' }
  /** Another record, named in a table by its code. */
  | { readonly kind: 'record'; readonly noun: InOutNoun }
  /** What is made of several parts, written as JSON. */
  | { readonly kind: 'parts' }

/** An entry of a record as a column of a table, found from the record's schema. */
export interface Column {
  /** Key of the entry. */
  readonly key: string
  /** Head of the column: the key, or for another record its noun where no other entry has that name. */
  readonly head: string
  readonly holds: Holds
  /** Whether it may hold nothing. */
  readonly nullable: boolean
}

/** What schemas tell of themselves, as far as it is read here. */
interface Def {
  readonly type: string
  readonly innerType?: z.core.$ZodType
  readonly format?: string
  readonly entries?: Readonly<Record<string, string>>
}

const defOf = (schema: z.core.$ZodType): Def => schema._zod.def as unknown as Def

/** Units stand at the end of names. The longer ending comes first: a speed in m/s ends as no length does. */
const endings: readonly (readonly [RegExp, Unit])[] = [
  [/MPerS$/, 'mPerS'],
  [/Mm$/, 'mm'],
  [/Deg$/, 'deg'],
  [/Rpm$/, 'rpm'],
  [/C$/, 'degC'],
  [/Minutes$/, 'min'],
  [/Days$/, 'day'],
  [/Px$/, 'px'],
  [/sweeps$/i, 'sweep'],
]

/** @returns a key's unit; what bears none is counted */
const unitOf = (key: string): Unit => endings.find(([ending]) => ending.test(key))?.[1] ?? 'count'

/** Records that are named for what they are to this one. */
const nounOf = (key: string): InOutNoun => (key === 'parentId' ? 'place' : (key.replace(/Id$/, '') as InOutNoun))

const isReference = (key: string, { type, format }: Def): boolean =>
  type === 'string' && format === 'uuid' && key.endsWith('Id')

const textKinds: Readonly<Record<string, Holds>> = { datetime: { kind: 'moment' }, date: { kind: 'day' } }

const holdsOf = (key: string, def: Def): Holds => {
  if (isReference(key, def)) return { kind: 'record', noun: nounOf(key) }
  if (def.type === 'number') return { kind: 'figure', unit: unitOf(key) }
  if (def.type === 'enum') return { kind: 'choice', options: Object.keys(def.entries ?? {}) }
  if (def.type === 'string') return textKinds[def.format ?? ''] ?? { kind: 'words' }
  return { kind: 'parts' }
}

const columnOf = (key: string, schema: z.core.$ZodType, taken: readonly string[], nullable = false): Column => {
  const def = defOf(schema)
  if (def.innerType) return columnOf(key, def.innerType, taken, nullable || def.type === 'nullable')
  const holds = holdsOf(key, def)
  const noun = key.replace(/Id$/, '')
  return { key, head: holds.kind === 'record' && !taken.includes(noun) ? noun : key, holds, nullable }
}

/** @returns an entry a column, in the schema's order */
export const columnsOf = (schema: z.ZodObject): readonly Column[] =>
  Object.entries(schema.shape).map(([key, each]) => columnOf(key, each as z.core.$ZodType, Object.keys(schema.shape)))
