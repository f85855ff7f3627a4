import type { Result } from '../../geometry/result.ts'
import type { OpenDatabase } from './open.ts'
import type { Database } from './schema.ts'

/**
 * The one way to the data: reads and writes take turns, since all share one connection and a read between the
 * statements of a write would see half of it.
 */
export interface Access {
  read<T>(work: (db: Database) => Promise<T>): Promise<T>
  /** One transaction; kept if the work answers a value, taken back if it answers problems or throws. */
  write<T>(work: (transaction: Database) => Promise<Result<T>>): Promise<Result<T>>
  /** Puts another open file in place of this one, between turns, and closes the old. */
  replace(make: () => Promise<Result<OpenDatabase>>): Promise<Result<OpenDatabase>>
  /**
   * Closes this file, lets `work` change what is on the disk and open what is there then, and goes on with that. Where it
   * cannot, `again` opens what is there after all.
   *
   * @returns what `work` answers; where `again` cannot open anything either, that
   */
  swap(
    work: () => Promise<Result<OpenDatabase>>,
    again: () => Promise<Result<OpenDatabase>>,
  ): Promise<Result<OpenDatabase>>
  schemaVersion(): number
  close(): Promise<void>
}

/** Carries a failed result out of a transaction, which rolls back only when something is thrown. */
class TakenBack extends Error {
  readonly result: Result<never>

  constructor(result: Result<never>) {
    super('taken back')
    this.result = result
  }
}

const transact = async <T>(db: Database, work: (transaction: Database) => Promise<Result<T>>): Promise<Result<T>> => {
  try {
    return await db.transaction().execute(async (transaction) => {
      const result = await work(transaction)
      if (!result.ok) throw new TakenBack(result)
      return result
    })
  } catch (error) {
    if (error instanceof TakenBack) return error.result
    throw error
  }
}

/** @returns work done strictly one after another, in the order asked for */
const createTurns = () => {
  let last: Promise<unknown> = Promise.resolve()
  return <T>(work: () => Promise<T>): Promise<T> => {
    const mine = last.then(work, work)
    last = mine.catch(() => undefined)
    return mine
  }
}

/** @param first the file that is open to begin with */
export const createAccess = (first: OpenDatabase): Access => {
  const inTurn = createTurns()
  let current = first
  return {
    read: (work) => inTurn(() => work(current.db)),
    write: (work) => inTurn(() => transact(current.db, work)),
    replace: (make) =>
      inTurn(async () => {
        const next = await make()
        if (!next.ok) return next
        await current.close()
        current = next.value
        return next
      }),
    swap: (work, again) =>
      inTurn(async () => {
        await current.close()
        const next = await work()
        const open = next.ok ? next : await again()
        if (!open.ok) return open
        current = open.value
        return next
      }),
    schemaVersion: () => current.schemaVersion,
    close: () => inTurn(() => current.close()),
  }
}
