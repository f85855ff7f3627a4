import type { TFunction } from 'i18next'
import { problem } from '../../geometry/result.ts'
import { type CommandEnd, refusedFor } from './commandEnd.ts'
import { runRackCard } from './rackCard.ts'
import { runRackCheck } from './rackCheck.ts'
import { runExport } from './rackExport.ts'
import { runImport } from './rackImport.ts'
import { RACK_USAGE } from './rackPlace.ts'

const verbs = { export: runExport, import: runImport, card: runRackCard, check: runRackCheck }

const isVerb = (word: string): word is keyof typeof verbs => Object.hasOwn(verbs, word)

/** @param args what follows `npm run job -- rack` */
export const runRack = async (t: TFunction, args: readonly string[]): Promise<CommandEnd> => {
  const [verb = '', ...rest] = args
  return isVerb(verb) ? verbs[verb](t, rest) : refusedFor(t, [problem(RACK_USAGE)])
}
