import { sql } from 'kysely'
import type { Tool } from '../contract/entities.ts'
import { type CodedStore, type Row, withoutMark } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'

/** Letters as a person types them in a hurry: no capitals, no accents. */
const folded = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()

const searchTextOf = ({ name, code, place, holder }: Tool): string => folded([code, name, place, holder].join('\n'))

const toolOfRow = (row: Row): Tool => {
  const { searchText: _, ...columns } = withoutMark(row)
  return columns as unknown as Tool
}

/** Tools of the rack. */
export const toolStore: CodedStore<Tool> = {
  noun: 'tool',
  labelOf: ({ name }) => name,
  toRow: (tool) => ({ ...tool, searchText: searchTextOf(tool) }),
  fromRow: toolOfRow,
}

/**
 * Tools in the order of their codes.
 *
 * @param search words that must each occur in a tool's name, code, place or holder; empty: all tools
 */
export const findTools = async (db: Database, search: string): Promise<Tool[]> => {
  let query = db.selectFrom('tool').selectAll().where('deletedAt', 'is', null)
  for (const word of folded(search).split(/\s+/).filter(Boolean))
    query = query.where(sql<number>`instr(searchText, ${word})`, '>', 0)
  const rows = await query
    .orderBy((row) => row.fn<number>('length', ['code']))
    .orderBy('code')
    .execute()
  return rows.map((row) => toolOfRow(row as unknown as Row))
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
