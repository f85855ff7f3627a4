/** Exit code for a job, a file or a call that cannot be done. */
const REFUSED = 2

/** How a command ended, and what it has to say on standard output and standard error. */
export interface CommandEnd {
  readonly exitCode: number
  readonly output: string
  readonly errors: string
}

export const inJson = (value: unknown): string => JSON.stringify(value, null, 2)

const linesOf = (lines: readonly string[]): string => lines.map((line) => `${line}\n`).join('')

/** @param notes lines of what should be heard of though all went well */
export const done = (output: string, notes: readonly string[] = []): CommandEnd => ({
  exitCode: 0,
  output: `${output}\n`,
  errors: linesOf(notes),
})

/** @param reasons a line each */
export const refused = (reasons: readonly string[]): CommandEnd => ({
  exitCode: REFUSED,
  output: '',
  errors: linesOf(reasons),
})
