import { totalmem, userInfo } from 'node:os'
import { basename } from 'node:path'
import about from '../../package.json' with { type: 'json' }

/** Which part of the program met what it should not have. */
export type Part = 'page' | 'window' | 'graphics' | 'service' | 'program'

/** A fault as it was met. */
export interface Fault {
  readonly part: Part
  /** An error, or words of ours, which are written as they are. */
  readonly error: unknown
}

/** What an error is told by: its kind, a code of the system's, its words, and the way it came. */
interface Told {
  readonly name: string
  readonly code: string
  readonly message: string
  readonly stack: string
}

/** Most lines of the way an error came. */
const MOST_FRAMES = 30
const MOST_LETTERS = 300

/** Errors whose words speak of code alone. Others may speak of what was being done: a name, a file, a line of a table. */
const OF_CODE: ReadonlySet<string> = new Set(['TypeError', 'ReferenceError', 'RangeError'])

const toldOf = (error: unknown): Told => {
  if (!(error instanceof Error)) return { name: '', code: '', message: '', stack: '' }
  const code = 'code' in error && typeof error.code === 'string' ? error.code : ''
  return { name: error.name, code, message: error.message, stack: error.stack ?? '' }
}

/** Without what is quoted; nothing at all where a path or the user's own name stands in it. */
const withoutPerson = (text: string): string => {
  const unquoted = text.replaceAll(/"[^"]*"|“[^”]*”|'[^']*'|`[^`]*`/g, '“…”')
  return /[\\/]/.test(unquoted) || unquoted.includes(userInfo().username) ? '' : unquoted
}

/** One line of the way: the name of a function and the file of the program, without the folders above it. */
const frameOf = (line: string): string | null => {
  const found = /^\s*at (?:(?:async )?([\w$.<>[\] ]{1,80}) \()?(.*?):(\d+):(\d+)\)?$/.exec(line)
  if (found === null) return null
  const [, work = '', place = '', row, column] = found
  const file = basename(place.replaceAll('\\', '/'))
  return /^[\w.-]+\.[cm]?[jt]sx?$/.test(file)
    ? `  at ${work} ${file}:${row}:${column}`.replace('  at  ', '  at ')
    : null
}

const framesOf = (stack: string): readonly string[] =>
  stack
    .split('\n')
    .map(frameOf)
    .filter((frame) => frame !== null)
    .slice(0, MOST_FRAMES)

/** How errors and the system's codes are called; anything else in their place may be anything. */
const NAME = /^[A-Z][A-Za-z]{0,40}(Error|Exception)$|^Error$/
const CODE = /^[A-Z][A-Z0-9_]{2,40}$/

const only = (form: RegExp, word: string): string => (form.test(word) ? word : '')

const GIB = 2 ** 30

/** The machine, as far as a fault may hang on it. */
const machine = (): string => {
  const { node, electron, chrome } = process.versions as Readonly<Record<string, string | undefined>>
  const engines = [electron && `Electron ${electron}`, chrome && `Chromium ${chrome}`, `Node ${node}`].filter(Boolean)
  return [`${process.platform} ${process.arch}`, `${Math.round(totalmem() / GIB)} GB`, ...engines].join(', ')
}

/**
 * A fault as a report that anybody may read: which version, when, what kind of error, and where in the program. Nothing of
 * the data, of whoever works here, or of where things lie on this machine.
 */
export const reportText = ({ part, error }: Fault, at: Date): string => {
  const { name, code, message, stack } = toldOf(error)
  const words = OF_CODE.has(name) ? withoutPerson(message).slice(0, MOST_LETTERS) : ''
  const said = typeof error === 'string' ? error.slice(0, MOST_LETTERS) : ''
  const kind = [only(NAME, name), only(CODE, code), words, said].filter((each) => each !== '').join(': ')
  const head = [
    `Camberwright ${about.version}, ${at.toISOString().slice(0, 16).replace('T', ' ')} UTC`,
    `part: ${part}`,
  ]
  return `${[...head, kind, ...framesOf(stack), machine()].join('\n')}\n`
}
