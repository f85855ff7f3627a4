import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { kindOfFile } from '../contract/fileKinds.ts'
import { defaultDataFolder, thisMachine } from './dataFolder.ts'

/** How the program is to be started. */
export interface StartOptions {
  /** Null: Electron if it can be had, else a browser. */
  readonly host: 'electron' | 'browser' | null
  readonly dataDir: string
  /** 0: any free one. */
  readonly port: number
  /** Print the address even where a window could be opened. */
  readonly addressOnly: boolean
  readonly help: boolean
  /** Files to open, as paths. */
  readonly files: readonly string[]
}

const MOST_PORT = 65535

const hostOf = (text: string | undefined): Result<StartOptions['host']> => {
  if (text === undefined) return ok(null)
  if (text === 'electron' || text === 'browser') return ok(text)
  return failed(problem('startHost', '--host', { text }))
}

const portOf = (text = '0'): Result<number> =>
  /^\d{1,5}$/.test(text) && Number(text) <= MOST_PORT
    ? ok(Number(text))
    : failed(problem('startPort', '--port', { text, most: MOST_PORT }))

const filesOf = (named: readonly string[]): Result<readonly string[]> => {
  const strange = named.find((each) => kindOfFile(each) === null)
  if (strange !== undefined) return failed(problem('startFile', '', { file: strange }))
  return ok(named.map((each) => resolve(each)))
}

const read = (args: readonly string[]) =>
  parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      host: { type: 'string' },
      data: { type: 'string' },
      port: { type: 'string' },
      address: { type: 'boolean', default: false },
      help: { type: 'boolean', short: 'h', default: false },
    },
  })

/** @param args what follows `npm start --` */
export const startOptionsOf = (args: readonly string[]): Result<StartOptions> => {
  try {
    const { values, positionals } = read(args)
    const { host, data, port, address, help } = values
    const files = filesOf(positionals)
    if (!files.ok) return files
    const [hostResult, portResult] = [hostOf(host), portOf(port)]
    if (!hostResult.ok) return hostResult
    if (!portResult.ok) return portResult
    const dataDir = data === undefined ? defaultDataFolder(thisMachine()) : resolve(data)
    return ok({
      host: hostResult.value,
      dataDir,
      port: portResult.value,
      addressOnly: address,
      help,
      files: files.value,
    })
  } catch (error) {
    return failed(problem('startOption', '', { detail: error instanceof Error ? error.message : String(error) }))
  }
}
