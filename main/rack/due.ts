import { type RawBuilder, sql } from 'kysely'

/**
 * Why an iron is due, as the file reckons it: `state` before `use` before `time`. An iron that was put by is never due;
 * one whose grind nobody noted cannot be due by time.
 *
 * @param now UTC ISO text
 */
export const dueReason = (now: string): RawBuilder<'state' | 'use' | 'time' | null> => sql`CASE
  WHEN tool.condition = 'retired' THEN NULL
  WHEN toolState.harmed = 'yes' OR tool.condition = 'damaged' THEN 'state'
  WHEN toolState.honings >= tool.dueHonings THEN 'use'
  WHEN julianday(${now}) - julianday(toolState.lastGroundAt) >= tool.dueDays THEN 'time'
END`

/** The rule's own order, the most pressing reason first and what is not due last. */
export const dueRank = (now: string): RawBuilder<number> =>
  sql`CASE ${dueReason(now)} WHEN 'state' THEN 0 WHEN 'use' THEN 1 WHEN 'time' THEN 2 ELSE 3 END`

/** @returns whether a loan's day has passed. @param today as `YYYY-MM-DD` */
export const isOverdue = (today: string): RawBuilder<boolean> =>
  sql<boolean>`(toolState.holderId IS NOT NULL AND toolState.dueBack < ${today})`
