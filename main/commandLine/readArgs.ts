import { type ParseArgsConfig, parseArgs } from 'node:util'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'

type Options = NonNullable<ParseArgsConfig['options']>

/** Stands for standard input. */
export const STANDARD = '-'

/** Whether a word of a call asks how it is made, whatever else is said. */
export const asksForHelp = (word: string): boolean => word === '--help' || word === '-h'

/** @returns the options by name and the words between them; @param usage code of the problem where a call says anything else */
export const readArgs = <T extends Options>(args: readonly string[], options: T, usage: string) => {
  const read = () => parseArgs({ args: [...args], allowPositionals: true, options })
  try {
    return ok(read())
  } catch {
    return failed(problem(usage)) satisfies Result<ReturnType<typeof read>>
  }
}
