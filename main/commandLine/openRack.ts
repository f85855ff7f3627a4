import { randomUUID } from 'node:crypto'
import { rmSync } from 'node:fs'
import { failed, ok, type Problem, problem, type Result } from '../../geometry/result.ts'
import { isThere } from '../backup/goBack.ts'
import { faultOf } from '../database/fault.ts'
import { lockFolder } from '../database/lock.ts'
import { userName } from '../start/userName.ts'
import { rackPath } from '../workshop/choice.ts'
import { openWorkshop, type Workshop } from '../workshop/workshop.ts'
import type { RackPlace } from './rackPlace.ts'

/** What was answered, and what should be heard of beside it. */
export interface Answered<T> {
  readonly value: T
  readonly notices: readonly Problem[]
}

/** What a command can do without. */
interface RackNeed {
  /** A rack that was never begun is begun for this. */
  readonly mayBegin?: boolean
  /** A damaged data file that is put aside is no reason to refuse. */
  readonly evenIfLost?: boolean
}

/** In place of a damaged file there is a new, empty one: a script must not take that for the rack. */
const isLost = ({ code }: Problem): boolean => code === 'rackMovedAside'

const answered = async <T>(
  workshop: Workshop,
  evenIfLost: boolean,
  work: () => Promise<Result<T>>,
): Promise<Result<Answered<T>>> => {
  const lost = workshop.notices().filter(isLost)
  if (lost.length > 0 && !evenIfLost) return failed(...lost)
  const made = await work()
  return made.ok ? ok({ value: made.value, notices: workshop.notices() }) : made
}

const isUnused = (workshop: Workshop): Promise<boolean> =>
  workshop.desk.access.read(
    async (db) => (await db.selectFrom('change').select('id').limit(1).executeTakeFirst()) === undefined,
  )

/** @param began whether the rack was begun for this: it is not left behind where nothing was written to it */
const closeAfter = async <T>(workshop: Workshop, began: boolean, work: () => Promise<T>): Promise<T> => {
  try {
    return await work()
  } finally {
    const path = workshop.path()
    const goes = began && (await isUnused(workshop))
    await workshop.close()
    if (goes) for (const part of ['', '-wal', '-shm']) rmSync(`${path}${part}`, { force: true })
  }
}

/**
 * Does something with a rack of a data folder, which is closed again whatever comes of it.
 *
 * @returns what the work answered; or why the rack cannot be opened: it is open in the program, above all
 */
export const withRack = async <T>(
  { dataDir, rack }: RackPlace,
  { mayBegin = false, evenIfLost = false }: RackNeed,
  work: (workshop: Workshop) => Promise<Result<T>>,
): Promise<Result<Answered<T>>> => {
  const began = !isThere(rackPath(dataDir, rack))
  if (began && rack === 'own' && !mayBegin) return failed(problem('rackNone', '', { folder: dataDir }))
  const lock = lockFolder(dataDir)
  if (!lock.ok) return lock
  try {
    const now = () => new Date()
    const opened = await openWorkshop({ dataDir, rack, who: userName(), now, newId: randomUUID, log: () => undefined })
    if (!opened.ok) return opened
    const workshop = opened.value
    return await closeAfter(workshop, began, () => answered(workshop, evenIfLost, () => work(workshop)))
  } catch (error) {
    return failed(faultOf(error))
  } finally {
    lock.value.release()
  }
}
