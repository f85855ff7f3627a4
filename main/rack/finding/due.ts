import { type RawBuilder, sql } from 'kysely'
import { dueReasons } from '../../contract/entities.ts'

type DueReason = (typeof dueReasons)[number]

/** The file keeps when each iron is due as words that sort (`main/database/migration6.ts`): by state, by use, by time. */
const key = sql.ref<string>('toolState.dueKey')

/** @returns the last key that is due. @param now UTC ISO text */
const lastDue = (now: string): string => `2${now}`

/** Why an iron is due; null: it is not. */
export const dueReason = (now: string): RawBuilder<DueReason | null> => sql`CASE
  WHEN ${key} = '0' THEN 'state' WHEN ${key} = '1' THEN 'use' WHEN ${key} <= ${lastDue(now)} THEN 'time' END`

/** @returns whether an iron is due for this reason. @param reason `any` of them */
export const isDue = (reason: DueReason | 'any', now: string): RawBuilder<boolean> => {
  if (reason === 'any') return sql<boolean>`${key} <= ${lastDue(now)}`
  if (reason === 'time') return sql<boolean>`${key} BETWEEN '2' AND ${lastDue(now)}`
  return sql<boolean>`${key} = ${String(dueReasons.indexOf(reason))}`
}

/** @returns whether a loan's day has passed. @param today as `YYYY-MM-DD` */
export const isOverdue = (today: string): RawBuilder<boolean> =>
  sql<boolean>`(toolState.holderId IS NOT NULL AND toolState.dueBack < ${today})`
