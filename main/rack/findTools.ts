import { type RawBuilder, sql } from 'kysely'
import type { ToolLine } from '../contract/entities.ts'
import {
  type Asked,
  type Filter,
  type Found,
  MOST_COUNTED,
  type SortColumn,
  type Standing,
} from '../contract/finding.ts'
import { placesAbove } from '../database/migration5Search.ts'
import type { Row } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { dueRank, dueReason, isOverdue } from './due.ts'
import { toolStore } from './tool.ts'

/** Words as the index is asked for them: each must occur, the last letters may still be missing. Null: none. */
const wordsAsked = (search: string): string | null => {
  const words = search.match(/[\p{L}\p{N}\p{M}]+/gu) ?? []
  return words.length === 0 ? null : words.map((word) => `"${word}"*`).join(' ')
}

const standing = (db: Database) =>
  db.selectFrom('tool').innerJoin('toolState', 'toolState.toolId', 'tool.id').where('tool.deletedAt', 'is', null)

type Condition = RawBuilder<boolean>

/** `kinds` and `conditions`: any of them. */
const among = (column: RawBuilder<unknown>, values: readonly string[]): Condition =>
  sql<boolean>`${column} IN (${sql.join(values)})`

/** The chain of a place holds those above it. */
const within = (placeId: string): Condition => sql<boolean>`(tool.placeId = ${placeId} OR tool.placeId IN (
  SELECT id FROM placeChain WHERE ${placeId} IN (${sql.raw(placesAbove)})))`

const conditionsOf = (filter: Filter, now: string): readonly Condition[] => {
  const today = now.slice(0, 10)
  const each: Record<keyof Filter, () => Condition> = {
    kinds: () => among(sql.ref('tool.kind'), filter.kinds ?? []),
    placeId: () => within(filter.placeId ?? ''),
    holderId: () => sql`toolState.holderId = ${filter.holderId}`,
    lent: () =>
      filter.lent === 'overdue'
        ? isOverdue(today)
        : filter.lent === 'lent'
          ? sql`toolState.holderId IS NOT NULL`
          : sql`toolState.holderId IS NULL`,
    due: () =>
      filter.due === 'any' ? sql`${dueReason(now)} IS NOT NULL` : sql`${dueReason(now)} = ${filter.due ?? null}`,
    purposeId: () =>
      sql`EXISTS (SELECT 1 FROM json_each(tool.curves) WHERE value ->> 'purposeId' = ${filter.purposeId})`,
    conditions: () => among(sql.ref('tool.condition'), filter.conditions ?? []),
    edge: () => (filter.edge === 'curved' ? sql`tool.reliefMm > 0` : sql`tool.reliefMm = 0`),
    bevelSide: () => sql`tool.bevelSide = ${filter.bevelSide}`,
    widthFromMm: () => sql`tool.widthMm >= ${filter.widthFromMm}`,
    widthToMm: () => sql`tool.widthMm <= ${filter.widthToMm}`,
    notSeenSince: () => sql`(toolState.lastSeenAt IS NULL OR toolState.lastSeenAt < ${filter.notSeenSince})`,
    own: () => sql`tool.own ->> ${`$."${filter.own?.fieldId}"`} = ${filter.own?.value}`,
  }
  return (Object.keys(each) as (keyof Filter)[]).filter((key) => filter[key] !== undefined).map((key) => each[key]())
}

const asked = (db: Database, { search, filter }: Pick<Asked, 'search' | 'filter'>, now: string) => {
  const words = wordsAsked(search)
  const found = standing(db).$if(words !== null, (query) =>
    query
      .innerJoin('toolWords', 'toolWords.toolId', 'tool.id')
      .where('toolWords.rowId', 'in', sql<number>`(SELECT rowid FROM toolSearch WHERE toolSearch MATCH ${words})`),
  )
  return conditionsOf(filter, now).reduce((query, condition) => query.where(condition), found)
}

/** What each column is sorted by. */
const sortedBy = (column: SortColumn, now: string): RawBuilder<unknown> => {
  if (column === 'name') return sql`tool.name COLLATE NOCASE`
  if (column === 'due') return dueRank(now)
  if (column === 'place') return sql`placeChain.path IS NULL, placeChain.path COLLATE NOCASE`
  if (column === 'lastGroundAt' || column === 'honings') return sql.ref(`toolState.${column}`)
  return sql.ref(`tool.${column}`)
}

/**
 * By code, by number as the numbers go. What was found by words comes in the order in which it was put on the rack, which
 * is the codes' order, unless another is asked for: sorting all that a single letter finds is what would be slow.
 */
const order = ({ search, sort, descending }: Asked, now: string): RawBuilder<unknown> => {
  const way = sql.raw(descending ? 'DESC' : 'ASC')
  if (sort === 'code')
    return wordsAsked(search) === null ? sql`length(tool.code) ${way}, tool.code ${way}` : sql`toolWords.rowId ${way}`
  return sql`${sortedBy(sort, now)} ${way}, length(tool.code), tool.code`
}

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

const withLines = <T extends ReturnType<typeof asked>>(query: T, now: string) =>
  query
    .leftJoin('placeChain', 'placeChain.id', 'tool.placeId')
    .leftJoin('person', 'person.id', 'toolState.holderId')
    .selectAll('tool')
    .select(lineColumns(now))

const lineOf = (row: unknown): ToolLine => toolStore.fromRow(row as Row) as ToolLine

const countOf = async (db: Database, which: Asked, now: string): Promise<number> => {
  const query = asked(db, which, now)
  if (wordsAsked(which.search) === null) {
    const { count } = await query.select((row) => row.fn.countAll<number>().as('count')).executeTakeFirstOrThrow()
    return count
  }
  const some = await query
    .select('tool.id')
    .limit(MOST_COUNTED + 1)
    .execute()
  return some.length
}

/** @returns the tools asked for, in their order, and how many there are in all. @param now UTC ISO text */
export const findTools = async (db: Database, which: Asked, now: string): Promise<Found> => {
  const rows = await withLines(asked(db, which, now), now)
    .orderBy(order(which, now))
    .limit(which.limit)
    .offset(which.offset)
    .execute()
  const total = await countOf(db, which, now)
  const more = wordsAsked(which.search) !== null && total > MOST_COUNTED
  return { tools: rows.map(lineOf), total: more ? MOST_COUNTED : total, more }
}

/** @returns one tool as the list shows it, or null where there is none */
export const oneTool = async (
  db: Database,
  which: { readonly id: string } | { readonly code: string },
  now: string,
): Promise<ToolLine | null> => {
  const [column, value] = 'id' in which ? (['tool.id', which.id] as const) : (['tool.code', which.code] as const)
  const query = withLines(asked(db, { search: '', filter: {} }, now), now)
  const row = await query.where(column, '=', value).executeTakeFirst()
  return row === undefined ? null : lineOf(row)
}

/** @returns those of some tools that stand, as the list shows them, in no order */
export const toolsOfIds = async (db: Database, ids: readonly string[], now: string): Promise<readonly ToolLine[]> => {
  const query = withLines(asked(db, { search: '', filter: {} }, now), now)
  const rows = ids.length === 0 ? [] : await query.where('tool.id', 'in', ids).execute()
  return rows.map(lineOf)
}

/** @returns how the rack stands, for its first sentence. @param now UTC ISO text */
export const standingOf = async (db: Database, now: string): Promise<Standing> => {
  const today = now.slice(0, 10)
  const row = await standing(db)
    .select([
      sql<number>`count(*)`.as('tools'),
      sql<number>`coalesce(sum(tool.reliefMm > 0), 0)`.as('curved'),
      sql<number>`coalesce(sum(toolState.holderId IS NOT NULL), 0)`.as('lent'),
      sql<number>`coalesce(sum(${isOverdue(today)}), 0)`.as('overdue'),
      sql<number>`coalesce(sum(${dueReason(now)} IS NOT NULL), 0)`.as('due'),
    ])
    .executeTakeFirstOrThrow()
  return row
}
