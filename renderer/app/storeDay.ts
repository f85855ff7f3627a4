import type { Result } from '../../geometry/result.ts'
import { localDay } from '../../main/contract/days.ts'
import type { Tool } from '../../main/contract/entities.ts'
import type { QueueEntry } from '../../main/contract/work.ts'
import { sayProblem } from './store.ts'
import { change, changeTold } from './storeRack.ts'

/** What is done with a day's queue; every change is said with its undo. */

/** @returns today by this machine's own calendar */
export const today = (): string => localDay(new Date())

/** Puts tools on a day's queue. @param label of the tool, or of them all */
export const enqueue = (toolIds: readonly string[], label: string, onDay: string = today()): Promise<Result<unknown>> =>
  changeTold('queueEntry.add', { toolIds: [...toolIds], onDay }, ({ value: added }) => [
    added.length === 0 ? 'day:there' : 'common:message.queueEntry.add',
    { label },
  ])

/** Puts the tool in hand on today's queue, and says why where it cannot be. */
export const enqueueTool = async ({ id, name }: Tool): Promise<void> => {
  const put = await enqueue([id], name)
  if (!put.ok && put.problems[0]) sayProblem(put.problems[0])
}

/** Brings over what was left on days before. @param label of them all */
export const carryOver = (onDay: string, label: string) => change('queueEntry.carry', { onDay }, label)

/** Ticks an iron as done, or as not yet. */
export const tickEntry = ({ id, version }: QueueEntry, done: boolean, label: string) =>
  change('queueEntry.tick', { id, version, done: done ? 'yes' : 'no' }, label)

/** Takes an iron off a day's queue. */
export const dequeue = ({ id, version }: QueueEntry, label: string) =>
  change('queueEntry.remove', { id, version }, label)
