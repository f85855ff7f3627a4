import type { TFunction } from 'i18next'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { fileKinds } from '../contract/fileKinds.ts'
import type { TakeOut } from '../contract/inOut.ts'
import { inOutServices } from '../inOut/inOutServices.ts'
import { createBlobs } from '../workshop/blobs.ts'
import type { Workshop } from '../workshop/workshop.ts'
import { type CommandEnd, done, inJson, refusedFor } from './commandEnd.ts'
import { nounOf } from './inOutNoun.ts'
import { withRack } from './openRack.ts'
import { mayWrite, type OutKind, writeWhole } from './outFile.ts'
import { type RackPlace, readRackArgs } from './rackPlace.ts'
import { endOf, unwatched } from './rackWork.ts'

/** The rack, or one kind of thing of it, as a file. */
type ExportOptions = RackPlace & Pick<TakeOut, 'what' | 'form'> & { readonly file: string }

/** By the ending of a file's name. */
const forms: Readonly<Record<string, TakeOut['form']>> = {
  zip: 'bundle',
  [fileKinds.rack.ending]: 'bundle',
  json: 'json',
  csv: 'csv',
}

const formOfName = (file: string): TakeOut['form'] | undefined =>
  forms[(/\.([a-z]+)$/i.exec(file)?.[1] ?? '').toLowerCase()]

const optionsOf = (args: readonly string[]): Result<ExportOptions> => {
  const call = readRackArgs(args, { noun: { type: 'string' } }, [1, 1])
  if (!call.ok) return call
  const { values, words, place } = call.value
  const [file = ''] = words
  const noun = nounOf(values.noun)
  if (!noun.ok) return noun
  const form = formOfName(file)
  if (form === undefined) return failed(problem('rackEnding', '', { file }))
  // A table holds one kind of thing, and of a rack that is its tools.
  return ok({ ...place, file, form, what: noun.value ?? (form === 'csv' ? 'tool' : 'rack') })
}

/** How files of a rack begin, as bytes: a zip, our document, and a table with the mark of UTF-8 that is headed by our codes. */
const marks: Readonly<Record<TakeOut['form'], string>> = {
  bundle: 'PK',
  json: '{\n  "form": "camberwright rack"',
  csv: '\u00ef\u00bb\u00bfcode,',
}

const outKind = (form: TakeOut['form']): OutKind => ({ mark: marks[form], overOther: 'rackOverOther' })

interface TakenOut {
  readonly file: string
  readonly form: TakeOut['form']
  readonly bytes: number
}

const takeOut = async (workshop: Workshop, { what, form, file }: ExportOptions): Promise<Result<TakenOut>> => {
  const blobs = createBlobs()
  const made = await inOutServices(workshop, blobs)['inOut.take']({ what, form }, unwatched())
  if (!made.ok) return made
  const bytes = blobs.get(made.value.blobId)?.bytes ?? new Uint8Array()
  const written = writeWhole(file, bytes)
  return written.ok ? ok({ file, form, bytes: bytes.length }) : written
}

/** Takes a rack out as a file. */
export const runExport = async (t: TFunction, args: readonly string[]): Promise<CommandEnd> => {
  const options = optionsOf(args)
  if (!options.ok) return refusedFor(t, options.problems)
  const may = mayWrite(options.value.file, outKind(options.value.form))
  if (!may.ok) return refusedFor(t, may.problems)
  const taken = await withRack(options.value, {}, (workshop) => takeOut(workshop, options.value))
  return endOf(t, taken, (value) => done(inJson(value)))
}
