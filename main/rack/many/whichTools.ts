import { sql } from 'kysely'
import { failed, ok, problem, type Result } from '../../../geometry/result.ts'
import type { Tool } from '../../contract/entities.ts'
import { askedSchema } from '../../contract/finding.ts'
import type { Which } from '../../contract/many.ts'
import type { Row } from '../../database/recordStore.ts'
import type { Database } from '../../database/schema.ts'
import { whereAsked } from '../finding/where.ts'
import { toolStore } from '../tool.ts'

const idsFound = async (db: Database, which: Which, now: string): Promise<readonly string[]> => {
  if ('ids' in which) return [...new Set(which.ids)]
  const { search, filter, except } = which
  const { rows } = await sql<{
    id: string
  }>`SELECT tool.id AS id ${whereAsked(askedSchema.parse({ search, filter }), now)}`.execute(db)
  const left = new Set(except)
  return rows.flatMap(({ id }) => (left.has(id) ? [] : [id]))
}

/** Ids asked for in one statement; SQLite takes 32,766 values at most. */
const AT_ONCE = 1000

/** @returns how many tools are named or found, without reading them. @param now UTC ISO text */
export const countNamed = async (db: Database, which: Which, now: string): Promise<number> =>
  (await idsFound(db, which, now)).length

/** @returns the tools as they now stand; or the problem `noLongerThere` where one of those named does not. @param now UTC ISO text */
export const toolsNamed = async (db: Database, which: Which, now: string): Promise<Result<readonly Tool[]>> => {
  const ids = await idsFound(db, which, now)
  const tools: Tool[] = []
  for (let from = 0; from < ids.length; from += AT_ONCE) {
    const some = ids.slice(from, from + AT_ONCE)
    const rows = await db
      .selectFrom('tool')
      .selectAll()
      .where('id', 'in', some)
      .where('deletedAt', 'is', null)
      .execute()
    if (rows.length < some.length) return failed(problem('someGone', 'which', { count: some.length - rows.length }))
    tools.push(...rows.map((row) => toolStore.fromRow(row as Row)))
  }
  return ok(tools)
}
