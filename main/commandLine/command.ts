import type { TFunction } from 'i18next'
import { problem } from '../../geometry/result.ts'
import { inOutNouns } from '../contract/inOut.ts'
import { languageOfLocale } from '../contract/language.ts'
import { speak } from '../contract/texts.ts'
import { createTexts } from '../texts.ts'
import { type CommandEnd, done, refusedFor } from './commandEnd.ts'
import { asksForHelp } from './readArgs.ts'

/** One command of the line: what follows its name comes in, how it ended goes out. */
type Command = (t: TFunction, args: readonly string[]) => Promise<CommandEnd>

/** Each is loaded when it is called: a report needs neither data nor type and paper. A new command is a line here and its help in the texts. */
const commands: Readonly<Record<string, () => Promise<Command>>> = {
  report: async () => (await import('./reportCommand.ts')).runReport,
  check: async () => (await import('./checkCommand.ts')).runCheck,
  worksheet: async () => (await import('./worksheetCommand.ts')).runWorksheet,
  rack: async () => (await import('./rackCommand.ts')).runRack,
  backup: async () => (await import('./backupCommand.ts')).runBackup,
  schema: async () => (await import('./schemaCommand.ts')).runSchema,
}

/** Without a command's name it is a report that is asked for; a job file called as a command needs `./` before it. */
const named = (args: readonly string[]): { readonly name: string; readonly rest: readonly string[] } => {
  const [first = '', ...rest] = args
  return Object.hasOwn(commands, first) ? { name: first, rest } : { name: 'report', rest: args }
}

const lessonNames = async (): Promise<string> => {
  const { builtInLessons } = await import('../lessons/builtIn.ts')
  return builtInLessons()
    .map(({ id }) => id)
    .join(', ')
}

/** @param name null: of all commands together */
const helpOf = async (t: TFunction, name: string | null): Promise<CommandEnd> => {
  const lessons = name === 'worksheet' ? await lessonNames() : ''
  const key = name === null ? 'command:help' : `command:${name}.help`
  return done(t(key, { nouns: inOutNouns.join(', '), lessons }))
}

/** Even a fault of the program's own is told in words. */
const runOrExplain = async (t: TFunction, name: string, args: readonly string[]): Promise<CommandEnd> => {
  try {
    const run = await commands[name]?.()
    return await (run as Command)(t, args)
  } catch {
    return refusedFor(t, [problem('commandFailed')])
  }
}

/** @param args what follows `npm run job --` */
export const runCommand = async (args: readonly string[]): Promise<CommandEnd> => {
  // A script reads what its own machine writes, whatever the language of a rack.
  await speak(languageOfLocale())
  const { t } = createTexts()
  const { name, rest } = named(args)
  if (!rest.some(asksForHelp)) return runOrExplain(t, name, rest)
  return helpOf(t, rest === args && !rest.some((word) => !asksForHelp(word)) ? null : name)
}
