import { existsSync } from 'node:fs'
import type { TFunction } from 'i18next'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { type CopyContents, lookInside } from '../backup/lookInside.ts'
import { rackPath } from '../workshop/choice.ts'
import { readsThrough } from '../workshop/readThrough.ts'
import type { Workshop } from '../workshop/workshop.ts'
import { type CommandEnd, done, inJson, refusedFor } from './commandEnd.ts'
import { withRack } from './openRack.ts'
import { type RackPlace, readRackArgs } from './rackPlace.ts'
import { endOf } from './rackWork.ts'

/** The file is looked into before it is opened: opening puts a damaged one aside, and a check changes nothing. */
const fileSound = ({ dataDir, rack }: RackPlace): Result<CopyContents> => {
  const path = rackPath(dataDir, rack)
  if (!existsSync(path)) return failed(problem('rackNone', '', { folder: dataDir }))
  const contents = lookInside(path)
  if (contents.ok) return contents
  const isDamaged = contents.problems.some(({ code }) => code === 'copyDamaged')
  return isDamaged ? failed(problem('rackDamaged', '', { file: path })) : contents
}

const allReads = async ({ desk }: Workshop): Promise<Result<null>> =>
  (await readsThrough(desk)) ? ok(null) : failed(problem('dataUnreadable'))

/** Checks a rack: the file's structure, then everything in it by the program's own schemas. */
export const runRackCheck = async (t: TFunction, args: readonly string[]): Promise<CommandEnd> => {
  const call = readRackArgs(args, {}, [0, 0])
  if (!call.ok) return refusedFor(t, call.problems)
  const { place } = call.value
  const contents = fileSound(place)
  if (!contents.ok) return refusedFor(t, contents.problems)
  const read = await withRack(place, {}, allReads)
  return endOf(t, read, () => done(inJson({ file: rackPath(place.dataDir, place.rack), ...contents.value })))
}
