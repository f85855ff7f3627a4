import { randomUUID } from 'node:crypto'
import { readFileSync, statSync } from 'node:fs'
import type { TFunction } from 'i18next'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { type Counts, type Fault, type Look, offerSchema, type TakeOut } from '../contract/inOut.ts'
import { placeInWords } from '../contract/inOutWords.ts'
import { MOST_FILE_BYTES } from '../contract/transport.ts'
import { inOutServices } from '../inOut/inOutServices.ts'
import type { CallContext } from '../services.ts'
import { createBlobs } from '../workshop/blobs.ts'
import type { Workshop } from '../workshop/workshop.ts'
import { type CommandEnd, done, inJson, refused } from './commandEnd.ts'
import { type Answered, withRack } from './openRack.ts'
import { mayWrite, type OutKind, writeWhole } from './outFile.ts'
import { type ExportOptions, type ImportOptions, rackOptionsOf } from './rackOptions.ts'
import { firstLines, oneLine, reasonLines, sentenceOf } from './reasonLines.ts'

/** How files of a rack begin, as bytes: a zip, our document, and a table with the mark of UTF-8 that is headed by our codes. */
const marks: Readonly<Record<TakeOut['form'], string>> = {
  bundle: 'PK',
  json: '{\n  "form": "camberwright rack"',
  csv: '\u00ef\u00bb\u00bfcode,',
}

const outKind = (form: TakeOut['form']): OutKind => ({ mark: marks[form], overOther: 'rackOverOther' })

/** Nobody watches how far a command is, and no window is to be told. */
const context = (): CallContext => ({
  signal: new AbortController().signal,
  progress: () => undefined,
  changed: () => undefined,
  offered: () => undefined,
})

interface TakenOut {
  readonly file: string
  readonly form: TakeOut['form']
  readonly bytes: number
}

const takeOut = async (workshop: Workshop, { what, form, place }: ExportOptions): Promise<Result<TakenOut>> => {
  const blobs = createBlobs()
  const made = await inOutServices(workshop, blobs)['inOut.take']({ what, form }, context())
  if (!made.ok) return made
  const bytes = blobs.get(made.value.blobId)?.bytes ?? new Uint8Array()
  const written = writeWhole(place, bytes)
  return written.ok ? ok({ file: place, form, bytes: bytes.length }) : written
}

/** What a file does to the rack, or would. */
interface BroughtIn {
  readonly written: boolean
  readonly form: Look['form']
  readonly counts: readonly Counts[]
  readonly faults: readonly Fault[]
  readonly faultCount: number
}

const bringIn = async (
  workshop: Workshop,
  { noun, dryRun, leaveOut }: ImportOptions,
  bytes: Uint8Array,
): Promise<Result<BroughtIn>> => {
  const blobs = createBlobs()
  const blobId = randomUUID()
  blobs.put(blobId, { bytes, fileName: '' }, 'application/octet-stream')
  const services = inOutServices(workshop, blobs)
  const asked = offerSchema.parse({ blobId, noun })
  const look = await services['inOut.look'](asked, context())
  if (!look.ok) return look
  const { form, counts, faults, faultCount } = look.value
  const seen = { form, counts, faults, faultCount }
  if (dryRun || (faultCount > 0 && !leaveOut)) return ok({ written: false, ...seen })
  const made = await services['inOut.bring']({ ...asked, leaveOut }, context())
  return made.ok ? ok({ written: true, ...seen, counts: made.value.counts }) : made
}

const readFile = (place: string): Result<Uint8Array> => {
  try {
    if (statSync(place).size > MOST_FILE_BYTES)
      return failed(problem('fileTooLarge', '', { mostMb: MOST_FILE_BYTES / 2 ** 20 }))
    return ok(readFileSync(place))
  } catch {
    return failed(problem('unreadable', '', { file: place }))
  }
}

const endOf = <T>(t: TFunction, result: Result<Answered<T>>, said: (value: T) => CommandEnd): CommandEnd => {
  if (!result.ok) return refused(reasonLines(t, result.problems))
  const { value, notices } = result.value
  const end = said(value)
  return { ...end, errors: `${end.errors}${done('', reasonLines(t, notices)).errors}` }
}

const runExport = async (t: TFunction, options: ExportOptions): Promise<CommandEnd> => {
  const may = mayWrite(options.place, outKind(options.form))
  if (!may.ok) return refused(reasonLines(t, may.problems))
  const taken = await withRack(options, (workshop) => takeOut(workshop, options))
  return endOf(t, taken, (value) => done(inJson(value)))
}

const runImport = async (t: TFunction, options: ImportOptions): Promise<CommandEnd> => {
  const bytes = readFile(options.place)
  if (!bytes.ok) return refused(reasonLines(t, bytes.problems))
  const brought = await withRack(options, (workshop) => bringIn(workshop, options, bytes.value))
  return endOf(t, brought, (value) => {
    const words = value.faults.map((fault) => sentenceOf(t, fault))
    const places = value.faults.map((fault) => oneLine(placeInWords(t, fault, value.counts.length > 1)))
    if (value.faultCount > 0 && !options.leaveOut)
      return refused(
        firstLines(
          t,
          words.map((text, i) => `${places[i]}${text}`),
          value.faultCount,
        ),
      )
    return done(inJson({ ...value, faults: value.faults.map((fault, i) => ({ ...fault, text: words[i] })) }))
  })
}

/** @param args what follows `npm run job -- rack` */
export const runRack = async (t: TFunction, args: readonly string[]): Promise<CommandEnd> => {
  const options = rackOptionsOf(args)
  if (!options.ok) return refused(reasonLines(t, options.problems))
  return options.value.does === 'export' ? runExport(t, options.value) : runImport(t, options.value)
}
