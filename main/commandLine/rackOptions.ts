import { resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { fileKinds } from '../contract/fileKinds.ts'
import { type InOutNoun, inOutNouns, type TakeOut } from '../contract/inOut.ts'
import { defaultDataFolder, thisMachine } from '../start/dataFolder.ts'
import type { RackName } from '../workshop/choice.ts'
import { STANDARD } from './jobOptions.ts'

interface Common {
  readonly dataDir: string
  readonly rack: RackName
  readonly place: string
}

/** The rack, or one kind of thing of it, as a file. */
export type ExportOptions = Common & { readonly does: 'export' } & Pick<TakeOut, 'what' | 'form'>

/** A file into the rack; what it is, its contents tell. */
export type ImportOptions = Common & {
  readonly does: 'import'
  /** What the rows of a table are; null: as they look. */
  readonly noun: InOutNoun | null
  readonly dryRun: boolean
  readonly leaveOut: boolean
}

/** What is asked of the rack from the command line. */
export type RackOptions = ExportOptions | ImportOptions

/** By the ending of a file's name. */
const forms: Readonly<Record<string, TakeOut['form']>> = {
  zip: 'bundle',
  [fileKinds.rack.ending]: 'bundle',
  json: 'json',
  csv: 'csv',
}

const formOfName = (place: string): TakeOut['form'] | undefined =>
  forms[(/\.([a-z]+)$/i.exec(place)?.[1] ?? '').toLowerCase()]

const nounOf = (text: string | undefined): Result<InOutNoun | null> => {
  if (text === undefined) return ok(null)
  const noun = inOutNouns.find((each) => each === text)
  return noun ? ok(noun) : failed(problem('rackNoun', '--noun', { text, nouns: inOutNouns.join(', ') }))
}

const read = (args: readonly string[]) =>
  parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      data: { type: 'string' },
      demo: { type: 'boolean', default: false },
      noun: { type: 'string' },
      'dry-run': { type: 'boolean', default: false },
      'leave-out': { type: 'boolean', default: false },
    },
  })

const judged = ({ values, positionals }: ReturnType<typeof read>): Result<RackOptions> => {
  const [does, place, ...others] = positionals
  const { data, demo, 'dry-run': dryRun, 'leave-out': leaveOut } = values
  if (!place || place === STANDARD || others.length > 0 || data === '') return failed(problem('rackUsage'))
  const noun = nounOf(values.noun)
  if (!noun.ok) return noun
  const dataDir = data === undefined ? defaultDataFolder(thisMachine()) : resolve(data)
  const common = { dataDir, rack: demo ? 'demo' : 'own', place } as const
  if (does === 'import') return ok({ does, ...common, noun: noun.value, dryRun, leaveOut })
  if (does !== 'export' || dryRun || leaveOut) return failed(problem('rackUsage'))
  const form = formOfName(place)
  if (form === undefined) return failed(problem('rackEnding', '', { file: place }))
  // A table holds one kind of thing, and of a rack that is its tools.
  return ok({ does, ...common, form, what: noun.value ?? (form === 'csv' ? 'tool' : 'rack') })
}

/** @param args what follows `npm run job -- rack` */
export const rackOptionsOf = (args: readonly string[]): Result<RackOptions> => {
  try {
    return judged(read(args))
  } catch {
    return failed(problem('rackUsage'))
  }
}
