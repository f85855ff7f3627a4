import { join } from 'node:path'
import { failed, ok, type Problem, problem, type Result } from '../geometry/result.ts'
import { languageOfLocale } from './contract/language.ts'
import { speak } from './contract/texts.ts'
import { hasDisplay } from './start/browserWindow.ts'
import { build, isBuildStale } from './start/build.ts'
import { thisMachine } from './start/dataFolder.ts'
import { type ElectronEnd, electronBinary, fetchElectron, runElectron } from './start/electronHost.ts'
import { runLoopbackHost, type Say } from './start/loopbackHost.ts'
import { type StartOptions, startOptionsOf } from './start/options.ts'
import { createTexts } from './texts.ts'

/** `npm start`: builds what is out of date, then opens the desktop window, or where it cannot be had a browser's. */
const root = join(import.meta.dirname, '..')
await speak(languageOfLocale())
const { t } = createTexts()

const say: Say = (key, params = {}) => void process.stdout.write(`${t(`hosts:start.${key}`, params)}\n`)

const sayProblem = ({ code, params }: Problem): void => void process.stderr.write(`${t(`problems:${code}`, params)}\n`)

const desktop = async (options: StartOptions): Promise<ElectronEnd | 'noDisplay'> => {
  if (!hasDisplay(thisMachine())) return 'noDisplay'
  let binary = electronBinary(root)
  if (binary === null) {
    say('fetching')
    binary = await fetchElectron(root)
  }
  return binary === null ? 'notFetched' : runElectron(binary, root, options)
}

const reasons = { noDisplay: 'startNoDisplay', notFetched: 'startNotFetched', endedAtOnce: 'startEndedAtOnce' } as const

/** The host asked for, or else the desktop window and, where that cannot be had, the browser. */
const run = async (options: StartOptions): Promise<Result<null>> => {
  if (options.host === 'browser') return runLoopbackHost(root, options, say)
  const end = await desktop(options)
  if (end === 'closed') return ok(null)
  if (options.host === 'electron') return failed(problem(reasons[end]))
  say(`instead.${end}`)
  return runLoopbackHost(root, options, say)
}

const refuse = (problems: readonly Problem[]): void => {
  problems.forEach(sayProblem)
  process.exitCode = 1
}

/** @returns whether there is a program to start */
const isBuilt = async (): Promise<boolean> => {
  if (!isBuildStale(root)) return true
  say('building')
  return build(root)
}

const start = async (): Promise<void> => {
  const options = startOptionsOf(process.argv.slice(2))
  if (!options.ok) return refuse(options.problems)
  if (options.value.help) return say('help')
  if (!(await isBuilt())) return refuse([])
  const end = await run(options.value)
  if (!end.ok) refuse(end.problems)
}

await start()
