import { randomUUID } from 'node:crypto'
import type { TFunction } from 'i18next'
import { ok, type Result } from '../../geometry/result.ts'
import { type Counts, type Fault, type InOutNoun, type Look, offerSchema } from '../contract/inOut.ts'
import { placeInWords } from '../contract/inOutWords.ts'
import { inOutServices } from '../inOut/inOutServices.ts'
import { createBlobs } from '../workshop/blobs.ts'
import type { Workshop } from '../workshop/workshop.ts'
import { type CommandEnd, done, inJson, refused, refusedFor } from './commandEnd.ts'
import { nounOf } from './inOutNoun.ts'
import { withRack } from './openRack.ts'
import { type RackPlace, readRackArgs } from './rackPlace.ts'
import { endOf, unwatched } from './rackWork.ts'
import { readBytes } from './readBytes.ts'
import { firstLines, oneLine, sentenceOf } from './reasonLines.ts'

/** How a file is brought in; what it is, its contents tell. */
interface ImportChoice {
  /** What the rows of a table are; null: as they look. */
  readonly noun: InOutNoun | null
  readonly dryRun: boolean
  readonly leaveOut: boolean
}
type ImportOptions = RackPlace & ImportChoice & { readonly file: string }

const options = {
  noun: { type: 'string' },
  'dry-run': { type: 'boolean', default: false },
  'leave-out': { type: 'boolean', default: false },
} as const

const optionsOf = (args: readonly string[]): Result<ImportOptions> => {
  const call = readRackArgs(args, options, [1, 1])
  if (!call.ok) return call
  const { values, words, place } = call.value
  const noun = nounOf(values.noun)
  if (!noun.ok) return noun
  const [file = ''] = words
  return ok({ ...place, file, noun: noun.value, dryRun: values['dry-run'], leaveOut: values['leave-out'] })
}

/** What a file does to the rack, or would. */
export interface BroughtIn {
  readonly written: boolean
  readonly form: Look['form']
  readonly counts: readonly Counts[]
  readonly faults: readonly Fault[]
  readonly faultCount: number
}

/** Looks at a file and, where that is asked for and nothing is faulty that may not be left out, brings it in. */
export const bringIn = async (
  workshop: Workshop,
  { noun, dryRun, leaveOut }: ImportChoice,
  bytes: Uint8Array,
): Promise<Result<BroughtIn>> => {
  const blobs = createBlobs()
  const blobId = randomUUID()
  blobs.put(blobId, { bytes, fileName: '' }, 'application/octet-stream')
  const services = inOutServices(workshop, blobs)
  const asked = offerSchema.parse({ blobId, noun })
  const look = await services['inOut.look'](asked, unwatched())
  if (!look.ok) return look
  const { form, counts, faults, faultCount } = look.value
  const seen = { form, counts, faults, faultCount }
  if (dryRun || (faultCount > 0 && !leaveOut)) return ok({ written: false, ...seen })
  const made = await services['inOut.bring']({ ...asked, leaveOut }, unwatched())
  return made.ok ? ok({ written: true, ...seen, counts: made.value.counts }) : made
}

/** A line for each fault that is told: where, then a sentence. */
export const faultLines = (t: TFunction, { faults, faultCount, counts }: BroughtIn): readonly string[] =>
  firstLines(
    t,
    faults.map((fault) => `${oneLine(placeInWords(t, fault, counts.length > 1))}${sentenceOf(t, fault)}`),
    faultCount,
  )

const withWords = (t: TFunction, brought: BroughtIn) => ({
  ...brought,
  faults: brought.faults.map((fault) => ({ ...fault, text: sentenceOf(t, fault) })),
})

/** Brings a file into a rack, or tells what that would do. */
export const runImport = async (t: TFunction, args: readonly string[]): Promise<CommandEnd> => {
  const asked = optionsOf(args)
  if (!asked.ok) return refusedFor(t, asked.problems)
  const { file, leaveOut } = asked.value
  const bytes = readBytes(file)
  if (!bytes.ok) return refusedFor(t, bytes.problems)
  const brought = await withRack(asked.value, { mayBegin: true }, (workshop) =>
    bringIn(workshop, asked.value, bytes.value),
  )
  return endOf(t, brought, (value) =>
    value.faultCount > 0 && !leaveOut ? refused(faultLines(t, value)) : done(inJson(withWords(t, value))),
  )
}
