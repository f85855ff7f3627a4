import { existsSync, readdirSync, statSync } from 'node:fs'
import { basename, dirname, join } from 'node:path'

/** Why a copy was made: unasked as the work went on, before the program changed the file's form, or before going back. */
export type CopyKind = 'kept' | 'beforeUpdate' | 'beforeGoingBack'

/** A whole copy of a data file. */
export interface Copy {
  /** File name within the folder of copies. */
  readonly name: string
  readonly kind: CopyKind
  /** When it was made, UTC. */
  readonly at: string
  readonly bytes: number
}

/** @returns where copies of a data file are kept */
export const backupFolder = (path: string): string => join(dirname(path), 'backups')

/** @returns a data file's name without its ending: what its copies' names begin with */
export const stemOf = (path: string): string => basename(path, '.db')

/** A moment as file names have it: no colons, which some systems refuse. */
const momentText = (now: Date): string => now.toISOString().replaceAll(':', '-')

const marks: Readonly<Record<CopyKind, string>> = { kept: '', beforeUpdate: 'schema', beforeGoingBack: 'before' }

/** @returns the path of a copy that is to be made. @param version of the form it holds, for `beforeUpdate` */
export const copyPath = (path: string, kind: CopyKind, now: Date, version = ''): string => {
  const mark = kind === 'kept' ? '' : `${marks[kind]}${version}-`
  return join(backupFolder(path), `${stemOf(path)}-${mark}${momentText(now)}.db`)
}

/** Day, and time if there is one: copies of older versions of the program bear only the day. */
const NAME = /^(schema\d*-|before-)?(\d{4}-\d\d-\d\d)(?:T(\d\d)-(\d\d)-(\d\d(?:\.\d+)?)Z)?\.db$/

const kindOf = (mark: string | undefined): CopyKind => {
  if (mark === undefined) return 'kept'
  return mark.startsWith(marks.beforeUpdate) ? 'beforeUpdate' : 'beforeGoingBack'
}

/** @returns what a file name tells, or null where it is not the name of a copy of this data file */
const readName = (stem: string, name: string): Pick<Copy, 'kind' | 'at'> | null => {
  const found = name.startsWith(`${stem}-`) ? NAME.exec(name.slice(stem.length + 1)) : null
  if (!found) return null
  const [, mark, day, hours = '00', minutes = '00', seconds = '00'] = found
  const at = new Date(`${day}T${hours}:${minutes}:${seconds}Z`)
  return Number.isNaN(at.getTime()) ? null : { kind: kindOf(mark), at: at.toISOString() }
}

/** @returns all copies of a data file, newest first; unfinished ones and strangers are no copies */
export const listCopies = (path: string): readonly Copy[] => {
  const folder = backupFolder(path)
  if (!existsSync(folder)) return []
  const copies = readdirSync(folder).flatMap((name) => {
    const told = readName(stemOf(path), name)
    return told ? [{ name, ...told, bytes: statSync(join(folder, name)).size }] : []
  })
  return copies.sort((a, b) => b.at.localeCompare(a.at) || b.name.localeCompare(a.name))
}
