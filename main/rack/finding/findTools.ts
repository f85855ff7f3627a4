import { sql } from 'kysely'
import type { ToolLine } from '../../contract/entities.ts'
import { type Asked, type Found, MOST_COUNTED } from '../../contract/finding.ts'
import type { Row } from '../../database/recordStore.ts'
import type { Database } from '../../database/schema.ts'
import { toolStore } from '../tool.ts'
import { dueReason, isDue } from './due.ts'
import { orderAsked } from './order.ts'
import { hasWords, whereAsked } from './where.ts'

const lineColumns = (now: string) =>
  [
    sql<string>`coalesce(placeChain.path, '')`.as('place'),
    sql<string>`coalesce(person.name, '')`.as('holder'),
    sql<string | null>`toolState.holderId`.as('holderId'),
    sql<string | null>`toolState.dueBack`.as('dueBack'),
    sql<string | null>`toolState.lastGroundAt`.as('lastGroundAt'),
    sql<number>`toolState.honings`.as('honings'),
    sql<string | null>`toolState.lastSeenAt`.as('lastSeenAt'),
    sql<'yes' | 'no'>`toolState.harmed`.as('harmed'),
    sql<number | null>`toolState.measuredReliefMm`.as('measuredReliefMm'),
    dueReason(now).as('due'),
  ] as const

const linesOf = (db: Database, now: string) =>
  db
    .selectFrom('tool')
    .innerJoin('toolState', 'toolState.toolId', 'tool.id')
    .leftJoin('placeChain', 'placeChain.id', 'tool.placeId')
    .leftJoin('person', 'person.id', 'toolState.holderId')
    .selectAll('tool')
    .select(lineColumns(now))
    .where('tool.deletedAt', 'is', null)

const lineOf = (row: unknown): ToolLine => toolStore.fromRow(row as Row) as ToolLine

/** The ids on a page, in order: a page is found by the narrowest indexes, and only its own lines are then read whole. */
const idsOnPage = async (db: Database, asked: Asked, now: string): Promise<readonly string[]> => {
  const { rows } = await sql<{ id: string }>`SELECT tool.id AS id ${whereAsked(asked, now)}
    ORDER BY ${orderAsked(asked)} LIMIT ${asked.limit} OFFSET ${asked.offset}`.execute(db)
  return rows.map(({ id }) => id)
}

/** What is due and nothing else: the kept state alone tells, in which what lies in the scrap box is never due. */
const isDueList = (asked: Asked): boolean => !hasWords(asked) && Object.keys(asked.filter).join() === 'due'

const countOf = async (db: Database, asked: Asked, now: string): Promise<number> => {
  const where = isDueList(asked)
    ? sql`FROM toolState WHERE ${isDue(asked.filter.due ?? 'any', now)}`
    : whereAsked(asked, now)
  const { rows } = await (hasWords(asked)
    ? sql<{ count: number }>`SELECT count(*) AS count FROM (SELECT 1 ${where} LIMIT ${MOST_COUNTED + 1})`
    : sql<{ count: number }>`SELECT count(*) AS count ${where}`
  ).execute(db)
  return rows[0]?.count ?? 0
}

/** @returns those of some tools that stand, as the list shows them, in no order. @param now UTC ISO text */
export const toolsOfIds = async (db: Database, ids: readonly string[], now: string): Promise<readonly ToolLine[]> => {
  const rows = ids.length === 0 ? [] : await linesOf(db, now).where('tool.id', 'in', ids).execute()
  return rows.map(lineOf)
}

/** @returns the tools asked for, in their order, and how many there are in all. @param now UTC ISO text */
export const findTools = async (db: Database, asked: Asked, now: string): Promise<Found> => {
  const ids = await idsOnPage(db, asked, now)
  const lines = new Map((await toolsOfIds(db, ids, now)).map((line) => [line.id, line]))
  // A page that is not full ends what was found.
  const isWhole = ids.length > 0 && ids.length < asked.limit
  const total = isWhole ? asked.offset + ids.length : await countOf(db, asked, now)
  const more = hasWords(asked) && total > MOST_COUNTED
  return { tools: ids.flatMap((id) => lines.get(id) ?? []), total: more ? MOST_COUNTED : total, more }
}

/** @returns one tool as the list shows it, or null where there is none */
export const oneTool = async (
  db: Database,
  which: { readonly id: string } | { readonly code: string },
  now: string,
): Promise<ToolLine | null> => {
  const [column, value] = 'id' in which ? (['tool.id', which.id] as const) : (['tool.code', which.code] as const)
  const row = await linesOf(db, now).where(column, '=', value).executeTakeFirst()
  return row === undefined ? null : lineOf(row)
}
