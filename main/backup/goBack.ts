import { existsSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { dirname } from 'node:path'
import { backupFolder, stemOf } from './copies.ts'
import { copyDataFile, deleteUnfinished, syncFolder } from './copyFile.ts'

/** A copy on its way to become the data file stands here, whole, beside it. */
const comingPath = (path: string): string => `${path}.comingBack`

/** Whether there is a data file, or one on its way to become it. */
export const isThere = (path: string): boolean => existsSync(path) || existsSync(comingPath(path))

/**
 * Brings a copy beside the data file, checked and synced; the data file may still be open.
 *
 * @throws where it cannot be read or written; nothing has then changed
 */
export const bringBeside = (path: string, copy: string): void => copyDataFile(copy, comingPath(path))

const refuseIfInUse = (path: string): void => {
  const log = `${path}-wal`
  if (existsSync(log) && statSync(log).size > 0) throw new Error('another program has the data file open')
}

/** Puts the old file back where nothing came in its place. @returns whether it is the data file again */
const isAsItWas = (path: string, aside: string): boolean => {
  try {
    if (!existsSync(path)) renameSync(aside, path)
  } catch {}
  return !existsSync(aside)
}

/**
 * Puts what `bringBeside` brought in the data file's place. The file that was there goes to `aside`, where it is a copy
 * itself, so that there is a way back. The data file must be closed.
 *
 * What fails once the old file is aside and will not come back is not thrown: `finishGoingBack` ends it.
 *
 * @throws where it cannot be done; the data file is then the one that was there
 */
export const changePlaces = (path: string, aside: string): void => {
  try {
    refuseIfInUse(path)
    mkdirSync(dirname(aside), { recursive: true })
    renameSync(path, aside)
    renameSync(comingPath(path), path)
    for (const folder of [dirname(path), dirname(aside)]) syncFolder(folder)
  } catch (error) {
    if (!isAsItWas(path, aside)) return
    rmSync(comingPath(path), { force: true })
    throw error
  }
}

/**
 * Takes `changePlaces` back, where what came cannot be opened. The data file must be closed.
 *
 * @returns whether the old file is the data file again; otherwise it is still the copy `aside`
 */
export const changePlacesBack = (path: string, aside: string): boolean => {
  try {
    // A log of the one file would be played into the other.
    for (const ending of ['-wal', '-shm']) rmSync(path + ending, { force: true })
    renameSync(aside, path)
  } catch {}
  return !existsSync(aside)
}

/**
 * Ends a going back that was cut short: done where the old file was already put aside, undone where it was not; and clears
 * away what any copy cut short has left.
 *
 * @throws where a file cannot be moved; the next start tries again
 */
export const finishGoingBack = (path: string): void => {
  for (const folder of [dirname(path), backupFolder(path)]) deleteUnfinished(folder, stemOf(path))
  const coming = comingPath(path)
  if (!existsSync(coming)) return
  if (existsSync(path)) rmSync(coming)
  else renameSync(coming, path)
}
