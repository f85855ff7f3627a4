import { ok, type Result } from '../../geometry/result.ts'
import { localDay } from '../contract/days.ts'
import type { BenchLogDraft } from '../contract/entities.ts'
import type { QueueEntry } from '../contract/work.ts'
import { onlyValue } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import type { Database } from '../database/schema.ts'
import { addRecord, editRecord, removeRecord } from '../rack/recordServices.ts'
import { queueEntryStore } from '../rack/stores.ts'
import { entriesOf, leftBefore } from './dayQueue.ts'

/** Puts tools on a day's queue, each once; one that was left on a day before comes over from there. In the caller's transaction. */
export const enqueue = async (
  db: Database,
  desk: Desk,
  toolIds: readonly string[],
  onDay: string,
): Promise<Result<QueueEntry[]>> => {
  const there = new Set((await entriesOf(db, onDay)).map(({ toolId }) => toolId))
  const left = new Map((await leftBefore(db, onDay)).toReversed().map((entry) => [entry.toolId, entry]))
  const added: QueueEntry[] = []
  for (const toolId of new Set(toolIds)) {
    if (there.has(toolId)) continue
    const earlier = left.get(toolId)
    const made = earlier
      ? await editRecord(db, desk, queueEntryStore, earlier, { onDay })
      : await addRecord(db, desk, queueEntryStore, { toolId, onDay, doneAt: null })
    if (!made.ok) return made
    added.push(made.value.value)
  }
  return ok(added)
}

/** Brings what was not done on days before over to this one. In the caller's transaction. */
export const carryOver = async (db: Database, desk: Desk, onDay: string): Promise<Result<QueueEntry[]>> => {
  const there = new Set((await entriesOf(db, onDay)).map(({ toolId }) => toolId))
  const brought: QueueEntry[] = []
  for (const entry of await leftBefore(db, onDay)) {
    const twice = there.has(entry.toolId)
    const made: Result<QueueEntry | null> = twice
      ? onlyValue(await removeRecord(db, desk, queueEntryStore, entry))
      : onlyValue(await editRecord(db, desk, queueEntryStore, entry, { onDay }))
    if (!made.ok) return made
    if (made.value) brought.push(made.value)
    there.add(entry.toolId)
  }
  return ok(brought)
}

/** Ticks an iron off the day's queue where it was just measured as ground. In the caller's transaction. */
export const tickGround = async (
  db: Database,
  desk: Desk,
  { toolId, stage }: Pick<BenchLogDraft, 'toolId' | 'stage'>,
): Promise<Result<null>> => {
  if (stage !== 'asGround') return ok(null)
  const now = desk.now()
  const entry = (await entriesOf(db, localDay(now))).find((each) => each.toolId === toolId && each.doneAt === null)
  if (!entry) return ok(null)
  const made = await editRecord(db, desk, queueEntryStore, entry, { doneAt: now.toISOString() })
  return made.ok ? ok(null) : made
}
