import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { backupFolder, type Copy, listCopies } from '../backup/copies.ts'

/** A name in every way in which a file may hold it that this program wrote: as it is, and composed. */
const bytesOf = (name: string): readonly Buffer[] =>
  [...new Set([name, name.normalize('NFC')])].map((each) => Buffer.from(each))

/**
 * Copies of a data file that hold a name. Their bytes are looked through, since a name may stand in any of their tables,
 * in the history, or in what was deleted; a short name may be found in other words, and the copy is then named for nothing.
 *
 * @param path the data file
 */
export const copiesWith = (path: string, name: string): readonly Copy[] =>
  listCopies(path).filter((copy) => {
    const bytes = readFileSync(join(backupFolder(path), copy.name))
    return bytesOf(name).some((wanted) => bytes.includes(wanted))
  })
