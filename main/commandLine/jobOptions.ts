import { parseArgs } from 'node:util'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'

/** What the command line is asked for: help, the job file's schema, or a job's report with or without its card. */
export type JobOptions =
  | { readonly does: 'help' }
  | { readonly does: 'schema' }
  | { readonly does: 'report'; readonly jobPlace: string; readonly cardPlace: string | null }

/** @param args what follows `npm run job --` */
export const jobOptionsOf = (args: readonly string[]): Result<JobOptions> => {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: { card: { type: 'string' }, schema: { type: 'boolean' }, help: { type: 'boolean', short: 'h' } },
    })
    if (values.help) return ok({ does: 'help' })
    if (values.schema) return ok({ does: 'schema' })
    const [jobPlace, ...others] = positionals
    if (jobPlace === undefined || others.length > 0) return failed(problem('jobUsage'))
    return ok({ does: 'report', jobPlace, cardPlace: values.card ?? null })
  } catch {
    return failed(problem('jobUsage'))
  }
}
