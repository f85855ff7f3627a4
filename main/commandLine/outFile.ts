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
import { SOLID_MARK } from '../../geometry/stl.ts'

/** A kind of file that the command writes: how each one begins, and the problem of another file in its place. */
export interface OutKind {
  readonly mark: string
  readonly overOther: string
}

export const cardKind: OutKind = { mark: '%PDF-', overOther: 'cardOverOther' }
export const solidKind: OutKind = { mark: SOLID_MARK, overOther: 'solidOverOther' }
export const worksheetKind: OutKind = { mark: '%PDF-', overOther: 'worksheetOverOther' }
export const backupKind: OutKind = { mark: 'SQLite format 3', overOther: 'backupOverOther' }

/** The first signs of a file, as many as the mark has. */
const beginning = (place: string, { mark }: OutKind): string => {
  const bytes = Buffer.alloc(mark.length)
  const handle = openSync(place, 'r')
  const length = readSync(handle, bytes, 0, bytes.length, 0)
  closeSync(handle)
  return bytes.toString('latin1', 0, length)
}

/** An earlier one of its kind may be replaced, and an empty file; anything else, the job file above all, stays as it is. */
const isOther = (place: string, kind: OutKind): boolean => {
  const there = statSync(place, { throwIfNoEntry: false })
  return there !== undefined && (!there.isFile() || !['', kind.mark].includes(beginning(place, kind)))
}

const unwritable = (file: string): Problem => problem('unwritable', '', { file })

/** @param place null: nothing is asked for @returns whether it may be written there; asked before its job is worked out */
export const mayWrite = (place: string | null, kind: OutKind): Result<null> => {
  if (place === null) return ok(null)
  try {
    accessSync(dirname(place), constants.W_OK)
    return isOther(place, kind) ? failed(problem(kind.overOther, '', { file: place })) : ok(null)
  } catch {
    return failed(unwritable(place))
  }
}

/** Writes a file that is whole or not there: under another name first. */
export const writeWhole = (place: string, bytes: Uint8Array): Result<null> => {
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
