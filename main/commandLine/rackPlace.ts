import { resolve } from 'node:path'
import { failed, ok, problem } from '../../geometry/result.ts'
import { defaultDataFolder, thisMachine } from '../start/dataFolder.ts'
import type { RackName } from '../workshop/choice.ts'
import { readArgs, STANDARD } from './readArgs.ts'

/** Which rack is meant: the user's own or the demo workshop, of a data folder. */
export interface RackPlace {
  readonly dataDir: string
  readonly rack: RackName
}

/** Code of the problem where a call about the rack says anything else than it may. */
export const RACK_USAGE = 'rackUsage'

const placeOptions = { data: { type: 'string' }, demo: { type: 'boolean', default: false } } as const

/**
 * Reads a call about a rack.
 *
 * @param options those of the command, beside `--data` and `--demo`
 * @param words how many there are between the options, at least and at most; none is empty or means a standard stream
 */
export const readRackArgs = <T extends NonNullable<Parameters<typeof readArgs>[1]>>(
  args: readonly string[],
  options: T,
  [least, most]: readonly [number, number],
  usage = RACK_USAGE,
) => {
  const read = readArgs(args, { ...options, ...placeOptions }, usage)
  if (!read.ok) return read
  const { values, positionals: words } = read.value
  const { data, demo } = values as { readonly data?: string; readonly demo: boolean }
  const strange = data === '' || words.some((word) => word === '' || word === STANDARD)
  if (strange || words.length < least || words.length > most) return failed(problem(usage))
  const place: RackPlace = {
    dataDir: data === undefined ? defaultDataFolder(thisMachine()) : resolve(data),
    rack: demo ? 'demo' : 'own',
  }
  return ok({ values, words, place })
}
