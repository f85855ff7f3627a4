import type { TFunction } from 'i18next'
import { z } from 'zod'
import { jobJsonSchema } from '../../geometry/job.ts'
import { lessonSchema } from '../../geometry/lesson/lesson.ts'
import { problem } from '../../geometry/result.ts'
import { documentJsonSchema } from '../inOut/document.ts'
import { type CommandEnd, done, inJson, refusedFor } from './commandEnd.ts'
import { printedReportSchema } from './reportCommand.ts'

/** What is described, each by the schema that its door judges by. A report goes out, so its defaults are filled in. */
const schemas: Readonly<Record<string, () => unknown>> = {
  job: jobJsonSchema,
  report: () => z.toJSONSchema(printedReportSchema),
  lesson: () => z.toJSONSchema(lessonSchema, { io: 'input' }),
  rack: documentJsonSchema,
}

/** Prints the JSON Schema (draft 2020-12) of one of the program's documents. */
export const runSchema = async (t: TFunction, args: readonly string[]): Promise<CommandEnd> => {
  const [name = '', ...others] = args
  const schema = others.length === 0 && Object.hasOwn(schemas, name) ? schemas[name] : undefined
  if (schema) return done(inJson(schema()))
  return refusedFor(t, [problem('schemaUsage', '', { names: Object.keys(schemas).join(', ') })])
}
