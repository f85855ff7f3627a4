import { isDeepStrictEqual } from 'node:util'
import { failed, ok, problem, type Result } from '../../../geometry/result.ts'
import type { Tool } from '../../contract/entities.ts'
import type { SetMany, Which } from '../../contract/many.ts'
import { NOTE_LENGTH } from '../../contract/record.ts'
import { asOne, type Made } from '../../database/change.ts'
import type { Desk } from '../../database/desk.ts'
import type { Database } from '../../database/schema.ts'
import type { CallContext, Services } from '../../services.ts'
import { editRecord, removeRecord } from '../recordServices.ts'
import { toolStore } from '../tool.ts'
import { countNamed, toolsNamed } from './whichTools.ts'

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

/** Does something to each of the tools; the first that cannot be ends it, and nothing is kept. @returns how many */
const each = async (
  db: Database,
  desk: Desk,
  which: Which,
  /** Null: there was nothing to do. */
  work: (tool: Tool) => Promise<Result<unknown> | null>,
): Promise<Result<number>> => {
  const tools = await toolsNamed(db, which, desk.now().toISOString())
  if (!tools.ok) return tools
  let count = 0
  for (const tool of tools.value) {
    const done = await work(tool)
    if (done === null) continue
    if (!done.ok) return done
    count += 1
  }
  return ok(count)
}

const editAll = (db: Database, desk: Desk, which: Which, set: SetMany): Promise<Result<number>> =>
  each(db, desk, which, async (tool) => {
    const change = changeOf(tool, set)
    if (change === null) return null
    if ((change.note ?? '').length > NOTE_LENGTH)
      return failed(problem('noteFull', 'set.noteAdded', { code: tool.code }))
    return editRecord(db, desk, toolStore, tool, change)
  })

const removeAll = (db: Database, desk: Desk, which: Which): Promise<Result<number>> =>
  each(db, desk, which, (tool) => removeRecord(db, desk, toolStore, tool))

/** The calls that change many tools as one: one line of history, one undo. */
export const manyServices = (desk: Desk): Pick<Services, 'tools.look' | 'tools.edit' | 'tools.remove'> => {
  const asOneChange = async (
    context: CallContext,
    work: (db: Database) => Promise<Result<number>>,
  ): Promise<Result<Made<number>>> => {
    const made = await desk.access.write((db) => asOne(db, () => work(db)))
    if (made.ok && made.value.value > 0) context.changed('tool', [])
    return made
  }
  return {
    'tools.look': ({ which, set }) =>
      desk.access.read(async (db) => {
        const now = desk.now().toISOString()
        if (Object.keys(set).length === 0) return ok({ tools: await countNamed(db, which, now), changed: 0 })
        const tools = await toolsNamed(db, which, now)
        if (!tools.ok) return tools
        const changed = tools.value.filter((tool) => changeOf(tool, set) !== null).length
        return ok({ tools: tools.value.length, changed })
      }),
    'tools.edit': ({ which, set }, context) => asOneChange(context, (db) => editAll(db, desk, which, set)),
    'tools.remove': ({ which }, context) => asOneChange(context, (db) => removeAll(db, desk, which)),
  }
}
