import { existsSync } from 'node:fs'
import { join } from 'node:path'
import type { TFunction } from 'i18next'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { backupFolder, type Copy, listCopies } from '../backup/copies.ts'
import { copyDataFile } from '../backup/copyFile.ts'
import { type CopyContents, lookInside } from '../backup/lookInside.ts'
import { faultText } from '../database/fault.ts'
import { rackPath } from '../workshop/choice.ts'
import { copyServices } from '../workshop/copyServices.ts'
import type { Workshop } from '../workshop/workshop.ts'
import { type CommandEnd, done, inJson, refusedFor } from './commandEnd.ts'
import { withRack } from './openRack.ts'
import { backupKind, mayWrite } from './outFile.ts'
import { type RackPlace, readRackArgs } from './rackPlace.ts'
import { endOf, unwatched } from './rackWork.ts'

const USAGE = 'backupUsage'

type Verb = (t: TFunction, place: RackPlace, word: string | undefined) => Promise<CommandEnd>

const pathOf = ({ dataDir, rack }: RackPlace): string => rackPath(dataDir, rack)

/** A copy as it is listed: its whole path, so that it can be given to any other command. */
const listed = (path: string, copy: Copy) => ({ ...copy, file: join(backupFolder(path), copy.name) })

const list: Verb = async (t, place, word) =>
  word === undefined
    ? done(inJson(listCopies(pathOf(place)).map((copy) => listed(pathOf(place), copy))))
    : refusedFor(t, [problem(USAGE)])

/** Among the copies that the program keeps, thinned as they age. */
const makeKept = async (t: TFunction, place: RackPlace): Promise<CommandEnd> => {
  const made = await withRack(place, {}, async (workshop) => copyServices(workshop)['copy.make']({}, unwatched()))
  return endOf(t, made, () => {
    const [newest] = listCopies(pathOf(place)).filter(({ kind }) => kind === 'kept')
    return done(inJson(newest ? listed(pathOf(place), newest) : null))
  })
}

/** SQLite lets a file be copied while another program writes to it, so this needs no hold on the folder. */
const writeCopy = (place: RackPlace, file: string): Result<CopyContents> => {
  const path = pathOf(place)
  if (!existsSync(path)) return failed(problem('rackNone', '', { folder: place.dataDir }))
  const may = mayWrite(file, backupKind)
  if (!may.ok) return may
  try {
    copyDataFile(path, file)
    return lookInside(file)
  } catch (error) {
    return failed(problem('backupFailed', '', { detail: faultText(error) }))
  }
}

const make: Verb = async (t, place, file) => {
  if (file === undefined) return makeKept(t, place)
  const made = writeCopy(place, file)
  return made.ok ? done(inJson({ file, ...made.value })) : refusedFor(t, made.problems)
}

interface Restored extends CopyContents {
  readonly file: string
  /** Where the data is that stood there before. */
  readonly before: string | null
}

const goBackTo = async (workshop: Workshop, file: string): Promise<Result<Restored>> => {
  const contents = lookInside(file)
  if (!contents.ok) return contents
  const gone = await workshop.goBack(file)
  if (!gone.ok) return gone
  const before = listCopies(workshop.path()).find(({ kind }) => kind === 'beforeGoingBack')
  return ok({ file, ...contents.value, before: before ? listed(workshop.path(), before).file : null })
}

/** A name from the list, or any copy by its path. */
const restore: Verb = async (t, place, word) => {
  if (word === undefined) return refusedFor(t, [problem(USAGE)])
  const kept = listCopies(pathOf(place)).find(({ name }) => name === word)
  const file = kept ? listed(pathOf(place), kept).file : word
  if (!existsSync(file)) return refusedFor(t, [problem('noSuchCopy', '', { file: word })])
  const gone = await withRack(place, { mayBegin: true, evenIfLost: true }, (workshop) => goBackTo(workshop, file))
  return endOf(t, gone, (value) => done(inJson(value)))
}

const verbs: Readonly<Record<string, Verb>> = { list, make, restore }

/** Copies of a rack's data: listed, made, gone back to. */
export const runBackup = async (t: TFunction, args: readonly string[]): Promise<CommandEnd> => {
  const call = readRackArgs(args, {}, [1, 2], USAGE)
  if (!call.ok) return refusedFor(t, call.problems)
  const [verb = '', word] = call.value.words
  const run = Object.hasOwn(verbs, verb) ? verbs[verb] : undefined
  return run ? run(t, call.value.place, word) : refusedFor(t, [problem(USAGE)])
}
