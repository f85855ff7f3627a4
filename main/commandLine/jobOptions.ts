import { parseArgs } from 'node:util'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'

/** Stands for standard input; cards and solids are files and cannot go there. */
export const STANDARD = '-'

/** A job's report, with or without its card and its ground blade. */
export interface ReportOptions {
  readonly does: 'report'
  /** A path, or `-` for standard input. */
  readonly jobPlace: string
  readonly cardPlace: string | null
  readonly solidPlace: string | null
}

/** What the command line is asked for. */
export type JobOptions = { readonly does: 'help' } | { readonly does: 'schema' } | ReportOptions

/** Whether a word of a call asks how it is made, whatever else is said. */
export const asksForHelp = (word: string): boolean => word === '--help' || word === '-h'

/** @param args what follows `npm run job --` */
export const jobOptionsOf = (args: readonly string[]): Result<JobOptions> => {
  try {
    const { values, positionals } = parseArgs({
      args: [...args],
      allowPositionals: true,
      options: {
        card: { type: 'string' },
        solid: { type: 'string' },
        schema: { type: 'boolean' },
        help: { type: 'boolean', short: 'h' },
      },
    })
    if (values.help) return ok({ does: 'help' })
    if (values.schema) return ok({ does: 'schema' })
    const [jobPlace, ...others] = positionals
    const places = [values.card, values.solid]
    if (!jobPlace || others.length > 0 || places.includes('') || places.includes(STANDARD))
      return failed(problem('jobUsage'))
    return ok({ does: 'report', jobPlace, cardPlace: values.card ?? null, solidPlace: values.solid ?? null })
  } catch {
    return failed(problem('jobUsage'))
  }
}
