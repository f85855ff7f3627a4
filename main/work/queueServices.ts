import { ok, type Result } from '../../geometry/result.ts'
import { asOne, type Made } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import type { Database } from '../database/schema.ts'
import { editRecord, removeRecord } from '../rack/recordServices.ts'
import { queueEntryStore } from '../rack/stores.ts'
import type { CallContext, Services } from '../services.ts'
import { dayQueue } from './dayQueue.ts'
import { carryOver, enqueue } from './enqueue.ts'

type QueueCalls = 'list' | 'add' | 'carry' | 'tick' | 'remove'

/** The calls of a day's queue; what several irons are put on, or brought over, by is one change. */
export const queueServices = (desk: Desk): Pick<Services, `queueEntry.${QueueCalls}`> => {
  const command = async <T>(context: CallContext, work: (db: Database) => Promise<Result<Made<T>>>) => {
    const made = await desk.access.write(work)
    if (made.ok) context.changed('queueEntry', [])
    return made
  }
  return {
    'queueEntry.list': async ({ onDay }) =>
      ok(await desk.access.read((db) => dayQueue(db, onDay, desk.now().toISOString()))),
    'queueEntry.add': ({ toolIds, onDay }, context) =>
      command(context, (db) => asOne(db, () => enqueue(db, desk, toolIds, onDay))),
    'queueEntry.carry': ({ onDay }, context) => command(context, (db) => asOne(db, () => carryOver(db, desk, onDay))),
    'queueEntry.tick': ({ done, ...seen }, context) =>
      command(context, (db) => {
        const doneAt = done === 'yes' ? desk.now().toISOString() : null
        return editRecord(db, desk, queueEntryStore, seen, { doneAt })
      }),
    'queueEntry.remove': (seen, context) => command(context, (db) => removeRecord(db, desk, queueEntryStore, seen)),
  }
}
