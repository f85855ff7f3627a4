import type { TFunction } from 'i18next'
import type { Problem } from '../../geometry/result.ts'
import { reasonLines } from './reasonLines.ts'

/** How a call ends, as a script sees it. The help and the README list them; a new one is a line there. */
export const exitCodes = {
  done: 0,
  /** A fault of the program's own. */
  failed: 1,
  /** The call, a job or a file cannot be done as it is; trying again gives the same. */
  refused: 2,
  /** The data cannot be had now: it is open in the program, or its disk is full or closed. Later it may be. */
  notNow: 3,
} as const

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
  exitCode: exitCodes.done,
  output: `${output}\n`,
  errors: linesOf(notes),
})

/** @param reasons a line each */
export const refused = (reasons: readonly string[]): CommandEnd => ({
  exitCode: exitCodes.refused,
  output: '',
  errors: linesOf(reasons),
})

/** Codes of what passes without anybody changing the call. */
const passing: ReadonlySet<string> = new Set([
  'folderInUse',
  'folderNoRoom',
  'folderNotWritable',
  'folderNotOpened',
  'diskFull',
  'diskFault',
  'dataBusy',
  'dataReadOnly',
  'backupFailed',
  'goingBackFailed',
])
const ownFaults: ReadonlySet<string> = new Set(['commandFailed', 'serviceFailed'])

const exitCodeOf = (problems: readonly Problem[]): number => {
  if (problems.some(({ code }) => ownFaults.has(code))) return exitCodes.failed
  return problems.some(({ code }) => passing.has(code)) ? exitCodes.notNow : exitCodes.refused
}

/** As `refused`, with the exit code that the problems have. */
export const refusedFor = (t: TFunction, problems: readonly Problem[]): CommandEnd => ({
  ...refused(reasonLines(t, problems)),
  exitCode: exitCodeOf(problems),
})
