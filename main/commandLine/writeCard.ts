import {
  accessSync,
  closeSync,
  constants,
  openSync,
  readSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { dirname } from 'node:path'
import { failed, ok, type Problem, problem, type Result } from '../../geometry/result.ts'

/** How every PDF begins. */
const PDF_MARK = '%PDF-'

/** The first signs of a file, as many as the mark has. */
const beginning = (place: string): string => {
  const bytes = Buffer.alloc(PDF_MARK.length)
  const handle = openSync(place, 'r')
  const length = readSync(handle, bytes, 0, bytes.length, 0)
  closeSync(handle)
  return bytes.toString('latin1', 0, length)
}

/** An earlier card may be replaced, and an empty file; anything else, the job file above all, stays as it is. */
const isOther = (place: string): boolean => {
  const there = statSync(place, { throwIfNoEntry: false })
  return there !== undefined && (!there.isFile() || !['', PDF_MARK].includes(beginning(place)))
}

const unwritable = (file: string): Problem => problem('unwritable', '', { file })

/** @returns whether a card may be written there; asked before its job is worked out */
export const mayWriteCard = (place: string): Result<null> => {
  try {
    accessSync(dirname(place), constants.W_OK)
    return isOther(place) ? failed(problem('cardOverOther', '', { file: place })) : ok(null)
  } catch {
    return failed(unwritable(place))
  }
}

/** Writes a card that is whole or not there: under another name first. */
export const writeCardFile = (place: string, bytes: Uint8Array): Result<null> => {
  const unfinished = `${place}.unfinished`
  try {
    writeFileSync(unfinished, bytes)
    renameSync(unfinished, place)
    return ok(null)
  } catch {
    rmSync(unfinished, { force: true })
    return failed(unwritable(place))
  }
}
