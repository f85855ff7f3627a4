import type { TFunction } from 'i18next'
import { jobJsonSchema } from '../../geometry/job.ts'
import { quantities } from '../../geometry/quantities.ts'
import type { Entry } from './entry.ts'

/** As much of JSON Schema as describes a job file. */
interface Schema {
  readonly type?: 'number' | 'integer' | 'string' | 'object' | 'array' | 'null'
  readonly anyOf?: readonly Schema[]
  readonly properties?: Readonly<Record<string, Schema>>
  readonly required?: readonly string[]
  readonly enum?: readonly string[]
  readonly const?: number
  readonly default?: unknown
  readonly minimum?: number
  readonly maximum?: number
}

/** @returns the schema of a value that is there, and whether null may stand instead */
const present = (schema: Schema): readonly [Schema, boolean] => {
  const one = schema.anyOf?.find(({ type }) => type !== 'null')
  return one ? [one, true] : [schema, false]
}

const kindOf = (t: TFunction, schema: Schema): string => {
  if (schema.enum) return t('help:jobType.oneOf', { options: schema.enum.join(', ') })
  if (schema.const !== undefined) return t('help:jobType.just', { value: schema.const })
  return t(`help:jobType.${schema.type}`)
}

/** Groups stand empty where they are left out, which each of their fields tells. */
const withoutIt = (t: TFunction, schema: Schema, needed: boolean): string | null => {
  if (needed) return t('help:jobType.needed')
  const [{ type }] = present(schema)
  return type === 'object' && schema.default !== null
    ? null
    : t('help:jobType.without', { value: JSON.stringify(schema.default) })
}

const factsOf = (t: TFunction, schema: Schema, needed: boolean): readonly string[] => {
  const [there, orNull] = present(schema)
  const { minimum: min, maximum: max } = there
  return [
    kindOf(t, there) + (orNull ? ` ${t('help:jobType.orNull')}` : ''),
    min === undefined ? null : t('help:range.between', { min, max }),
    withoutIt(t, schema, needed),
  ].filter((fact) => fact !== null)
}

/** A figure is described where the table of quantities has it; other fields have words of their own. */
const lineOf = (t: TFunction, path: string): string => {
  const [section = '', key = ''] = path.split('.').slice(-2)
  const ofSection: object | undefined = quantities[section as keyof typeof quantities]
  return ofSection && key in ofSection
    ? t(`quantities:${section}.${key}.sentence`)
    : t(`help:jobField.${path.replaceAll('.', '/')}`)
}

const entriesOf = (t: TFunction, { properties = {}, required = [] }: Schema, above: string): readonly Entry[] =>
  Object.entries(properties).flatMap(([name, schema]) => {
    const path = above + name
    const entry: Entry = {
      page: 'jobFile',
      id: `jobFile.${path}`,
      title: path,
      lines: [lineOf(t, path)],
      facts: factsOf(t, schema, required.includes(name)),
    }
    return [entry, ...entriesOf(t, present(schema)[0], `${path}.`)]
  })

/** Every field of a job file, from the schema that reads it. */
export const jobFieldEntries = (t: TFunction): readonly Entry[] => entriesOf(t, jobJsonSchema() as Schema, '')
