import { sql } from 'kysely'
import type { Tool, ToolLine } from '../contract/entities.ts'
import { jsonStore, type Row } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'

/** Tools of the rack. */
export const toolStore = jsonStore<Tool>('tool', ({ name }) => name, ['curves', 'own'])

/** Words as the index is asked for them: each must occur, the last letters may still be missing. Null: none. */
const wordsAsked = (search: string): string | null => {
  const words = search.match(/[\p{L}\p{N}\p{M}]+/gu) ?? []
  return words.length === 0 ? null : words.map((word) => `"${word}"*`).join(' ')
}

const linesOf = (db: Database) =>
  db
    .selectFrom('tool')
    .innerJoin('toolState', 'toolState.toolId', 'tool.id')
    .leftJoin('placeChain', 'placeChain.id', 'tool.placeId')
    .leftJoin('person', 'person.id', 'toolState.holderId')
    .selectAll('tool')
    .select((row) => [
      row.fn.coalesce('placeChain.path', sql.lit('')).as('place'),
      row.fn.coalesce('person.name', sql.lit('')).as('holder'),
      'toolState.holderId',
      'toolState.dueBack',
      'toolState.lastGroundAt',
      'toolState.honings',
      'toolState.lastSeenAt',
      'toolState.harmed',
      'toolState.measuredReliefMm',
    ])
    .where('tool.deletedAt', 'is', null)

/**
 * Tools in the order of their codes, as the list shows them.
 *
 * @param search words that must each begin a word of a tool, its place or its holder; empty: all tools
 */
export const findTools = async (db: Database, search: string): Promise<ToolLine[]> => {
  let query = linesOf(db)
  const asked = wordsAsked(search)
  if (asked !== null)
    query = query.where(
      'tool.id',
      'in',
      sql<string>`(SELECT toolId FROM toolWords WHERE rowId IN (SELECT rowid FROM toolSearch WHERE toolSearch MATCH ${asked}))`,
    )
  const rows = await query
    .orderBy((row) => row.fn<number>('length', ['tool.code']))
    .orderBy('tool.code')
    .execute()
  return rows.map((row) => toolStore.fromRow(row as unknown as Row) as ToolLine)
}

/** @returns who has a tool; empty: nobody */
export const holderOf = async (db: Database, toolId: string): Promise<string> => {
  const row = await db
    .selectFrom('toolState')
    .innerJoin('person', 'person.id', 'toolState.holderId')
    .select('person.name')
    .where('toolId', '=', toolId)
    .executeTakeFirst()
  return row?.name ?? ''
}

/** @returns how many tools stand in the rack */
export const countTools = async (db: Database): Promise<number> => {
  const { count } = await db
    .selectFrom('tool')
    .select((row) => row.fn.countAll<number>().as('count'))
    .where('deletedAt', 'is', null)
    .executeTakeFirstOrThrow()
  return count
}
