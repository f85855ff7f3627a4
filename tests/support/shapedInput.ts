import type { z } from 'zod'
import { keptWords, LONG_WORDS, refusedWords } from './hostileWords.ts'

/** What inputs are made from: chance, and ids of records that stand. */
export interface Source {
  random(): number
  readonly ids: readonly string[]
}

/** The part of a schema that says what it takes. */
interface Def {
  readonly type: string
  readonly shape?: Readonly<Record<string, Schema>>
  readonly element?: Schema
  readonly options?: readonly Schema[]
  readonly innerType?: Schema
  readonly valueType?: Schema
  readonly left?: Schema
  readonly right?: Schema
  readonly in?: Schema
  readonly items?: readonly Schema[]
  readonly entries?: Readonly<Record<string, string | number>>
  readonly values?: readonly unknown[]
  readonly getter?: () => Schema
}
type Schema = z.ZodType & { readonly def: Def; readonly format?: string | null }

export const oneOf = <T>({ random }: Source, values: readonly T[]): T =>
  values[Math.floor(random() * values.length)] as T

/** Nothing that a call should take, or that a careless one would stumble over. */
const garbage: readonly unknown[] = [
  ...[null, undefined, true, '', 0, -1, 1.5, -0, 1e308, 2 ** 53, Number.NaN, Number.POSITIVE_INFINITY, [], {}, [[]]],
  ...[new Date(0), new Uint8Array(3), 10n, Object.create(null), JSON.parse('{"__proto__":{"isAdmitted":true}}')],
  ...[{ constructor: { prototype: { isAdmitted: true } } }, { toString: 1 }, { length: 1e9 }, LONG_WORDS],
  ...[...keptWords, ...Object.values(refusedWords)],
]

const figures = [0, 1, 2, 3, 5, 10, 25, 30, 60, 130, 0.1, 0.5, -1, 1e6, 4_294_967_296]

const aString = (source: Source, format: string | null | undefined): string => {
  if (format === 'uuid' || format === 'guid') return oneOf(source, source.ids)
  if (format === 'datetime')
    return oneOf(source, ['2026-01-05T08:00:00.000Z', '1970-01-01T00:00:00Z', '9999-12-31T23:59:59Z'])
  if (format === 'date') return oneOf(source, ['2026-01-05', '0001-01-01', '9999-12-31'])
  return source.random() < 0.5 ? oneOf(source, ['', 'a', 'try', 'left', 'name']) : oneOf(source, keptWords)
}

const anObject = (source: Source, shape: Readonly<Record<string, Schema>>, depth: number): object =>
  Object.fromEntries(
    Object.entries(shape).flatMap(([key, field]) => {
      const value = shaped(source, field, depth + 1)
      return value === undefined ? [] : [[key, value]]
    }),
  )

const several = <T>({ random }: Source, make: () => T): T[] => Array.from({ length: Math.floor(random() * 4) }, make)

/** Deeper than any schema goes that does not hold itself. */
const DEEPEST = 12

/** A value of a schema's shape; its figures and words may still be out of bounds. */
export const shaped = (source: Source, schema: Schema, depth = 0): unknown => {
  const { def } = schema
  if (depth > DEEPEST) return null
  const within = (inner: Schema | undefined): unknown => (inner === undefined ? null : shaped(source, inner, depth + 1))
  if (def.type === 'object') return anObject(source, def.shape ?? {}, depth)
  if (def.type === 'array') return several(source, () => within(def.element))
  if (def.type === 'tuple') return def.items?.map(within)
  if (def.type === 'record')
    return Object.fromEntries(several(source, () => [aString(source, 'uuid'), within(def.valueType)]))
  if (def.type === 'union') return within(oneOf(source, def.options ?? []))
  if (def.type === 'intersection') return { ...(within(def.left) as object), ...(within(def.right) as object) }
  if (def.type === 'enum') return oneOf(source, Object.values(def.entries ?? {}))
  if (def.type === 'literal') return oneOf(source, def.values ?? [])
  if (def.type === 'boolean') return source.random() < 0.5
  if (def.type === 'number') return oneOf(source, figures)
  if (def.type === 'string') return aString(source, schema.format)
  if (def.type === 'optional' || def.type === 'default')
    return source.random() < 0.5 ? undefined : within(def.innerType)
  if (def.type === 'nullable') return source.random() < 0.3 ? null : within(def.innerType)
  if (def.type === 'pipe') return within(def.in)
  if (def.type === 'lazy') return within(def.getter?.())
  if (def.innerType !== undefined) return within(def.innerType)
  return def.type === 'null' ? null : oneOf(source, garbage)
}

/** The same value with one thing in it spoilt: garbage in a place, a field too many, or a field left out. */
export const spoilt = (source: Source, value: unknown): unknown => {
  if (typeof value !== 'object' || value === null || source.random() < 0.1) return oneOf(source, garbage)
  const keys = Object.keys(value)
  if (keys.length === 0) return { ...value, more: oneOf(source, garbage) }
  const key = oneOf(source, keys)
  const inner = (value as Record<string, unknown>)[key]
  if (Array.isArray(value)) return value.map((each) => (source.random() < 0.5 ? spoilt(source, each) : each))
  if (source.random() < 0.2) return Object.fromEntries(Object.entries(value).filter(([name]) => name !== key))
  return { ...value, [key]: spoilt(source, inner) }
}

/** One input of each manner in turn: of the schema's shape, nearly so, and not at all. */
export const inputFor = (source: Source, schema: z.ZodType): unknown => {
  const manner = source.random()
  if (manner > 0.9) return oneOf(source, garbage)
  const value = shaped(source, schema as Schema)
  return manner > 0.55 ? spoilt(source, value) : value
}
