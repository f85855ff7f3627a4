import { type RawBuilder, sql } from 'kysely'
import type { Standing } from '../../contract/finding.ts'
import type { Database } from '../../database/schema.ts'
import { isDue, isOverdue } from './due.ts'

const tools = (condition: RawBuilder<unknown>) =>
  sql`(SELECT count(*) FROM tool WHERE deletedAt IS NULL AND ${condition})`

/** Few are lent at a time, so that looking up each tool costs nothing. */
const lent = (condition: RawBuilder<unknown>) =>
  sql`(SELECT count(*) FROM toolState CROSS JOIN tool ON tool.id = toolState.toolId
    WHERE toolState.holderId IS NOT NULL AND tool.deletedAt IS NULL AND ${condition})`

/** @returns how the rack stands, for its first sentence; each count goes through one index. @param now UTC ISO text */
export const standingOf = async (db: Database, now: string): Promise<Standing> => {
  const { rows } = await sql<Standing>`SELECT
    ${tools(sql`TRUE`)} AS tools,
    ${tools(sql`reliefMm > 0`)} AS curved,
    ${lent(sql`TRUE`)} AS lent,
    ${lent(isOverdue(now.slice(0, 10)))} AS overdue,
    (SELECT count(*) FROM toolState WHERE ${isDue('any', now)}) AS due`.execute(db)
  return rows[0] as Standing
}
