import { sql } from 'kysely'
import { failed, ok, problem, type Result } from '../../../geometry/result.ts'
import type { Tool } from '../../contract/entities.ts'
import { askedSchema } from '../../contract/finding.ts'
import type { Which } from '../../contract/many.ts'
import type { Row } from '../../database/recordStore.ts'
import type { Database } from '../../database/schema.ts'
import { whereAsked } from '../finding/where.ts'
import { toolStore } from '../tool.ts'

/** @returns the ids of the tools that are named or found, each once. @param now UTC ISO text */
export const idsOf = async (db: Database, which: Which, now: string): Promise<readonly string[]> => {
  if ('ids' in which) return [...new Set(which.ids)]
  const { search, filter, except } = which
  const { rows } = await sql<{
    id: string
  }>`SELECT tool.id AS id ${whereAsked(askedSchema.parse({ search, filter }), now)}`.execute(db)
  const left = new Set(except)
  return rows.flatMap(({ id }) => (left.has(id) ? [] : [id]))
}

/** Tools read in one statement; SQLite takes 32,766 values at most. */
export const AT_ONCE = 1000

/** @param ids at most `AT_ONCE`. @returns these tools as they now stand; or `someGone` where one of them does not */
export const standingTools = async (db: Database, ids: readonly string[]): Promise<Result<readonly Tool[]>> => {
  const rows = await db
    .selectFrom('tool')
    .selectAll()
    .where('id', 'in', [...ids])
    .where('deletedAt', 'is', null)
    .execute()
  if (rows.length < ids.length) return failed(problem('someGone', 'which', { count: ids.length - rows.length }))
  return ok(rows.map((row) => toolStore.fromRow(row as Row)))
}
