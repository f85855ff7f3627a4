import { setImmediate } from 'node:timers/promises'
import { isDeepStrictEqual } from 'node:util'
import { failed, ok, problem, type Result } from '../../../geometry/result.ts'
import type { Tool } from '../../contract/entities.ts'
import type { Outlook, SetMany, Which } from '../../contract/many.ts'
import { NOTE_LENGTH } from '../../contract/record.ts'
import { asOne, type Made } from '../../database/change.ts'
import type { Desk } from '../../database/desk.ts'
import type { Database } from '../../database/schema.ts'
import type { CallContext, Services } from '../../services.ts'
import { counting, unlessStopped, type Watch } from '../../watch.ts'
import { editRecord, removeRecord } from '../recordServices.ts'
import { toolStore } from '../tool.ts'
import { AT_ONCE, idsOf, standingTools } from './whichTools.ts'

const ownWith = (tool: Tool, set: SetMany['own'] = {}): Tool['own'] =>
  Object.fromEntries(
    Object.entries({ ...tool.own, ...set }).filter((entry): entry is [string, string | number] => entry[1] !== null),
  )

/** What is to be changed of one tool; null: it is so already. */
const changeOf = (tool: Tool, { noteAdded = '', own, ...set }: SetMany): Partial<Tool> | null => {
  const note = noteAdded === '' ? tool.note : [tool.note, noteAdded].filter(Boolean).join('\n')
  const wanted = Object.entries({ ...set, note, own: ownWith(tool, own) }).filter(
    ([key, value]) => value !== undefined && !isDeepStrictEqual(value, tool[key as keyof Tool]),
  )
  return wanted.length === 0 ? null : Object.fromEntries(wanted)
}

/** Null: there is nothing to do. */
type ToOne = (tool: Tool) => Promise<Result<unknown> | null>

/** Tools changed before other messages are let in, a stop among them. */
const BETWEEN_LOOKS = 100

/** @param went is told of each. @returns how many had something done to them */
const toSome = async (tools: readonly Tool[], work: ToOne, went: (tools: number) => void): Promise<Result<number>> => {
  let count = 0
  for (const [i, tool] of tools.entries()) {
    if (i % BETWEEN_LOOKS === 0) await setImmediate()
    const done = await work(tool)
    went(1)
    if (done === null) continue
    if (!done.ok) return done
    count += 1
  }
  return ok(count)
}

/** Does something to each of the tools; the first that cannot be ends it, as a stop does, and nothing is kept. @returns how many */
const toAll = (db: Database, now: string, which: Which, watch: Watch, work: ToOne): Promise<Result<number>> =>
  unlessStopped(async () => {
    const ids = await idsOf(db, which, now)
    const went = counting(watch, ids.length)
    let count = 0
    for (let from = 0; from < ids.length; from += AT_ONCE) {
      const tools = await standingTools(db, ids.slice(from, from + AT_ONCE))
      if (!tools.ok) return tools
      const some = await toSome(tools.value, work, went)
      if (!some.ok) return some
      count += some.value
    }
    return ok(count)
  })

const edited =
  (db: Database, desk: Desk, set: SetMany): ToOne =>
  async (tool) => {
    const change = changeOf(tool, set)
    if (change === null) return null
    if ((change.note ?? '').length > NOTE_LENGTH)
      return failed(problem('noteFull', 'set.noteAdded', { code: tool.code }))
    return editRecord(db, desk, toolStore, tool, change)
  }

/** @returns how many tools there are, and how many of them a change would change */
const lookAt = async (db: Database, now: string, which: Which, set: SetMany): Promise<Result<Outlook>> => {
  const ids = await idsOf(db, which, now)
  let changed = 0
  for (let from = 0; from < ids.length && Object.keys(set).length > 0; from += AT_ONCE) {
    const tools = await standingTools(db, ids.slice(from, from + AT_ONCE))
    if (!tools.ok) return tools
    changed += tools.value.filter((tool) => changeOf(tool, set) !== null).length
  }
  return ok({ tools: ids.length, changed })
}

/** The calls that change many tools as one: one line of history, one undo. */
export const manyServices = (desk: Desk): Pick<Services, 'tools.look' | 'tools.edit' | 'tools.remove'> => {
  const now = () => desk.now().toISOString()
  const asOneChange = async (
    which: Which,
    context: CallContext,
    work: (db: Database) => ToOne,
  ): Promise<Result<Made<number>>> => {
    const made = await desk.access.write((db) => asOne(db, () => toAll(db, now(), which, context, work(db))))
    if (made.ok && made.value.value > 0) context.changed('tool', [])
    return made
  }
  return {
    'tools.look': ({ which, set }) => desk.access.read((db) => lookAt(db, now(), which, set)),
    'tools.edit': ({ which, set }, context) => asOneChange(which, context, (db) => edited(db, desk, set)),
    'tools.remove': ({ which }, context) =>
      asOneChange(which, context, (db) => (tool) => removeRecord(db, desk, toolStore, tool)),
  }
}
