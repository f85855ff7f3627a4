import { type RawBuilder, sql } from 'kysely'
import type { Asked } from '../../contract/finding.ts'
import { conditionsOf } from './conditions.ts'

/** Words as the index is asked for them: each must occur, the last letters may still be missing. Null: none. */
const wordsAsked = (search: string): string | null => {
  const words = search.match(/[\p{L}\p{N}\p{M}]+/gu) ?? []
  return words.length === 0 ? null : words.map((word) => `"${word}"*`).join(' ')
}

/** Whether words are searched for. */
export const hasWords = ({ search }: Pick<Asked, 'search'>): boolean => wordsAsked(search) !== null

/** Conditions and columns that the kept state of a tool answers, and few tools meet: it is gone through first. */
const STATE_FIRST = ['due', 'lent', 'holderId'] as const

/**
 * Tables in the order in which they are gone through. It is laid down here, since the file keeps no statistics: words lead
 * to tools in the order of the index, so that a page is full before all matches were read.
 */
const tablesOf = ({ search, filter, sort }: Asked): RawBuilder<unknown> => {
  if (wordsAsked(search) !== null)
    return sql`toolSearch CROSS JOIN toolWords ON toolWords.rowId = toolSearch.rowid
      CROSS JOIN tool ON tool.id = toolWords.toolId CROSS JOIN toolState ON toolState.toolId = tool.id`
  const stateFirst = STATE_FIRST.some((key) => filter[key] !== undefined && filter[key] !== 'here')
  const byState = ['due', 'lastGroundAt'].includes(sort)
  if (stateFirst || byState) return sql`toolState CROSS JOIN tool ON tool.id = toolState.toolId`
  const asksState = (['lent', 'notSeenSince', 'sharp'] as const).some((key) => filter[key] !== undefined)
  if (!asksState && !['honings', 'lastSeenAt'].includes(sort)) return sql`tool`
  return sql`tool CROSS JOIN toolState ON toolState.toolId = tool.id`
}

/** @returns FROM and WHERE of the tools asked for. @param now UTC ISO text */
export const whereAsked = (asked: Asked, now: string): RawBuilder<unknown> => {
  const words = wordsAsked(asked.search)
  const conditions = [
    sql`tool.deletedAt IS NULL`,
    ...(words === null ? [] : [sql`toolSearch MATCH ${words}`]),
    ...conditionsOf(asked.filter, now),
  ]
  return sql`FROM ${tablesOf(asked)} WHERE ${sql.join(conditions, sql` AND `)}`
}
