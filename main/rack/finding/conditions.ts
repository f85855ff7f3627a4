import { type RawBuilder, sql } from 'kysely'
import type { Filter } from '../../contract/finding.ts'
import { placesAbove } from '../../database/migration5Search.ts'
import { isDue, isOverdue } from './due.ts'

type Condition = RawBuilder<boolean>

/** Any of these. */
const among = (column: RawBuilder<unknown>, values: readonly string[]): Condition =>
  sql<boolean>`${column} IN (${sql.join(values)})`

/** The chain of a place holds those above it. */
const within = (placeId: string): Condition => sql<boolean>`(tool.placeId = ${placeId} OR tool.placeId IN (
  SELECT id FROM placeChain WHERE ${placeId} IN (${sql.raw(placesAbove)})))`

const lent = (which: Filter['lent'], today: string): Condition => {
  if (which === 'overdue') return isOverdue(today)
  return which === 'lent' ? sql`toolState.holderId IS NOT NULL` : sql`toolState.holderId IS NULL`
}

/** What is put by is never due, so that is asked beside. */
const isSharp = (now: string): Condition => sql<boolean>`((toolState.lastGroundAt IS NOT NULL OR toolState.honings > 0)
  AND toolState.harmed = 'no' AND tool.condition <> 'retired' AND NOT ${isDue('any', now)} AND toolState.holderId IS NULL)`

/** @returns what must all hold of `tool` and `toolState`. @param now UTC ISO text */
export const conditionsOf = (filter: Filter, now: string): readonly Condition[] => {
  const each: Record<keyof Filter, () => Condition> = {
    kinds: () => among(sql.ref('tool.kind'), filter.kinds ?? []),
    placeId: () => within(filter.placeId ?? ''),
    holderId: () => sql`toolState.holderId = ${filter.holderId}`,
    lent: () => lent(filter.lent, now.slice(0, 10)),
    due: () => isDue(filter.due ?? 'any', now),
    sharp: () => isSharp(now),
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
