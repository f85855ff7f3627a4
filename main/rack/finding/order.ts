import { type RawBuilder, sql } from 'kysely'
import type { Asked, SortColumn } from '../../contract/finding.ts'
import { hasWords } from './where.ts'

/** The way down to a tool's place; those without a place come last. */
const placeWay = sql`(SELECT path FROM placeChain WHERE id = tool.placeId)`

/** What each column is sorted by. */
const sortedBy = (column: SortColumn): RawBuilder<unknown> => {
  if (column === 'name') return sql`tool.name COLLATE NOCASE`
  if (column === 'due') return sql`toolState.dueKey`
  if (column === 'place') return sql`tool.placeId IS NULL, ${placeWay} COLLATE NOCASE`
  if (column === 'lastGroundAt' || column === 'honings' || column === 'lastSeenAt')
    return sql.ref(`toolState.${column}`)
  if (column === 'maker' || column === 'steel') return sql`${sql.ref(`tool.${column}`)} COLLATE NOCASE`
  return sql.ref(`tool.${column}`)
}

/**
 * By code, by number as the numbers go. What was found by words comes in the order in which it was put on the rack, which
 * is the codes' order, unless another is asked for: sorting all that a single letter finds is what would be slow.
 */
export const orderAsked = (asked: Asked): RawBuilder<unknown> => {
  const way = sql.raw(asked.descending ? 'DESC' : 'ASC')
  if (asked.sort !== 'code') return sql`${sortedBy(asked.sort)} ${way}, length(tool.code), tool.code`
  return hasWords(asked) ? sql`toolSearch.rowid ${way}` : sql`length(tool.code) ${way}, tool.code ${way}`
}
