import { z } from 'zod'

/** The part of a JSON Schema that inputs are made from. */
interface Shape {
  readonly type?: string
  readonly const?: unknown
  readonly enum?: readonly unknown[]
  readonly anyOf?: readonly Shape[]
  readonly oneOf?: readonly Shape[]
  readonly properties?: Readonly<Record<string, Shape>>
  readonly required?: readonly string[]
  readonly additionalProperties?: Shape | boolean
  readonly propertyNames?: Shape
  readonly items?: Shape
  readonly minItems?: number
  readonly format?: string
  readonly pattern?: string
  readonly minimum?: number
  readonly maximum?: number
  readonly $ref?: string
}

/** What inputs are made with. */
export interface Making {
  readonly random: () => number
  /** Ids and codes that stand, so that not every record is one that does not. */
  readonly known: readonly string[]
  /** Share of places at which something else is put than belongs there: 0 to 1. */
  readonly junk: number
}

const HOSTILE = [
  ...['', ' ', 'a', 'Iron', '<script>alert(1)</script>', "'; DROP TABLE tool; --", '‮evil', '\u0000', '\ud800'],
  ...[
    '__proto__',
    'constructor',
    '../../etc/passwd',
    '=1+1',
    '{{x}}',
    'n'.repeat(5000),
    '%s%n',
    '2026-02-30',
    '"',
    '-0',
  ],
]
const nested = (depth: number): unknown => (depth === 0 ? [] : [nested(depth - 1)])
const JUNK: readonly unknown[] = [
  ...[null, undefined, true, 0, -1, 1e308, Number.MAX_SAFE_INTEGER, Number.NaN, Number.POSITIVE_INFINITY],
  ...[{}, [], [null], { length: 5 }, JSON.parse('{"__proto__":{"polluted":true}}'), nested(200), new Date(0)],
  ...HOSTILE,
]

const pick = <T>(list: readonly T[], random: () => number): T => list[Math.floor(random() * list.length)] as T

const uuid = (random: () => number): string => {
  const hex = (length: number) => Array.from({ length }, () => Math.floor(random() * 16).toString(16)).join('')
  return `${hex(8)}-${hex(4)}-4${hex(3)}-8${hex(3)}-${hex(12)}`
}

const textOf = ({ format, pattern }: Shape, { random, known }: Making): string => {
  if (format === 'uuid') return known.length > 0 && random() < 0.7 ? pick(known, random) : uuid(random)
  if (format === 'date-time') return new Date(Math.floor(random() * 2e12)).toISOString()
  if (format === 'date') return new Date(Math.floor(random() * 2e12)).toISOString().slice(0, 10)
  if (pattern?.includes('0-9a-f') && pattern.includes('64')) return 'ab'.repeat(32)
  return random() < 0.2 ? pick(known.length > 0 ? known : ['01'], random) : pick(HOSTILE, random)
}

const figureOf = ({ type, minimum = -1000, maximum = 1000 }: Shape, { random }: Making): number => {
  const end = random()
  const value = end < 0.15 ? minimum : end < 0.3 ? maximum : minimum + random() * (maximum - minimum)
  return type === 'integer' ? Math.round(value) : value
}

const objectOf = (shape: Shape, making: Making, root: Shape): unknown => {
  const { properties = {}, required = [], additionalProperties } = shape
  const made: Record<string, unknown> = {}
  for (const [key, inner] of Object.entries(properties)) {
    const left = required.includes(key) ? making.random() < making.junk / 4 : making.random() < 0.4
    if (!left) made[key] = anythingOf(inner, making, root)
  }
  if (typeof additionalProperties === 'object')
    for (let k = Math.floor(making.random() * 3); k > 0; k--)
      made[textOf(shape.propertyNames ?? {}, making)] = anythingOf(additionalProperties, making, root)
  if (making.random() < making.junk / 4) made[pick(HOSTILE, making.random)] = pick(JUNK, making.random)
  return made
}

const anythingOf = (shape: Shape, making: Making, root: Shape): unknown => {
  const { random } = making
  if (random() < making.junk) return pick(JUNK, random)
  const among = shape.anyOf ?? shape.oneOf
  if (among) return anythingOf(pick(among, random), making, root)
  if (shape.const !== undefined) return shape.const
  if (shape.enum) return pick(shape.enum, random)
  switch (shape.type) {
    case 'object':
      return objectOf(shape, making, root)
    case 'array':
      return Array.from({ length: (shape.minItems ?? 0) + Math.floor(random() * 3) }, () =>
        anythingOf(shape.items ?? {}, making, root),
      )
    case 'string':
      return textOf(shape, making)
    case 'number':
    case 'integer':
      return figureOf(shape, making)
    case 'boolean':
      return random() < 0.5
    case 'null':
      return null
    default:
      return pick(JUNK, random)
  }
}

/** @returns an input that a schema asks for, spoilt at as many places as `junk` says */
export const randomInput = (schema: z.ZodType, making: Making): unknown => {
  const shape = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any', reused: 'inline' }) as Shape
  return anythingOf(shape, making, shape)
}
