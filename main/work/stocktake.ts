import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { CallInput } from '../contract/calls.ts'
import { readCode } from '../contract/codes.ts'
import type { Filter } from '../contract/finding.ts'
import type { Place } from '../contract/people.ts'
import { placePath, wayUp } from '../contract/placePath.ts'
import { MOST_MISSING, MOST_SEEN, type SeenTool, type StocktakeStanding } from '../contract/stocktake.ts'
import type { Sighting, Stocktake } from '../contract/work.ts'
import { onlyValue } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import { findByCode, listRecords, needRecord } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { lastAtTheBench } from '../people/atTheBench.ts'
import { findTools, toolsOfIds } from '../rack/finding/findTools.ts'
import { addRecord, editRecord } from '../rack/recordServices.ts'
import { placeStore, sightingStore, stocktakeStore } from '../rack/stores.ts'
import { toolStore } from '../rack/tool.ts'

/** @returns the stocktake begun last, whether it goes on or not; null: there was none */
const lastStocktake = async (db: Database): Promise<Stocktake | null> => {
  const row = await db
    .selectFrom('stocktake')
    .selectAll()
    .where('deletedAt', 'is', null)
    .orderBy('startedAt', 'desc')
    .executeTakeFirst()
  return row === undefined ? null : stocktakeStore.fromRow(row as never)
}

/** A stocktake of one place has the place's code for its note, so that whoever reads the record sees what it was of. */
const placeOf = async (db: Database, { note }: Stocktake): Promise<Place | null> => {
  const read = readCode(note)
  return read?.noun === 'place' ? ((await findByCode(db, placeStore, read.code))?.record ?? null) : null
}

/** Begins one, in the caller's transaction; only one goes on at a time. */
export const beginStocktake = async (db: Database, desk: Desk, placeId: string | null) => {
  const last = await lastStocktake(db)
  if (last !== null && last.endedAt === null) return failed(problem('stocktakeOpen'))
  const place = placeId === null ? ok(null) : await needRecord(db, placeStore, placeId, 'placeId')
  if (!place.ok) return place
  const fields = { startedAt: desk.now().toISOString(), endedAt: null, note: place.value?.code ?? '' }
  return addRecord(db, desk, stocktakeStore, fields)
}

const belongsIn = (places: readonly Place[], tool: { readonly placeId: string | null }, placeId: string): boolean =>
  wayUp(places, tool.placeId).some(({ id }) => id === placeId)

const sightingOf = async (db: Database, stocktakeId: string, toolId: string): Promise<Sighting | null> => {
  const row = await db
    .selectFrom('sighting')
    .selectAll()
    .where('stocktakeId', '=', stocktakeId)
    .where('toolId', '=', toolId)
    .where('deletedAt', 'is', null)
    .executeTakeFirst()
  return row === undefined ? null : sightingStore.fromRow(row as never)
}

/** Notes that a tool is there, in the caller's transaction; seen twice it is one sighting, which says where it was last. */
export const seeTool = async (
  db: Database,
  desk: Desk,
  { stocktakeId, toolId, placeId, who = '' }: CallInput<'stocktake.see'>,
): Promise<Result<Sighting>> => {
  const stocktake = await needRecord(db, stocktakeStore, stocktakeId, 'stocktakeId')
  if (!stocktake.ok) return stocktake
  if (stocktake.value.endedAt !== null) return failed(problem('stocktakeEnded', 'stocktakeId'))
  const tool = await needRecord(db, toolStore, toolId, 'toolId')
  if (!tool.ok) return tool
  const places = await listRecords(db, placeStore)
  const elsewhere = placeId !== null && !belongsIn(places, tool.value, placeId) ? placeId : null
  const there = await sightingOf(db, stocktakeId, toolId)
  if (there !== null && there.placeId === elsewhere) return ok(there)
  const at = desk.now().toISOString()
  const made = there
    ? await editRecord(db, desk, sightingStore, there, { placeId: elsewhere, at })
    : await addRecord(db, desk, sightingStore, {
        ...{ toolId, stocktakeId, placeId: elsewhere, at },
        who: who === '' ? await lastAtTheBench(db) : who,
      })
  return onlyValue(made)
}

const sightingsOf = (db: Database, { id }: Stocktake) =>
  db.selectFrom('sighting').where('stocktakeId', '=', id).where('deletedAt', 'is', null)

const seenIn = async (db: Database, stocktake: Stocktake, places: readonly Place[], now: string) => {
  const rows = await sightingsOf(db, stocktake).selectAll().orderBy('at', 'desc').limit(MOST_SEEN).execute()
  const sightings = rows.map((row) => sightingStore.fromRow(row as never))
  const ids = sightings.map(({ toolId }) => toolId)
  const tools = new Map((await toolsOfIds(db, ids, now)).map((tool) => [tool.id, tool]))
  return sightings.flatMap((sighting): SeenTool[] => {
    const tool = tools.get(sighting.toolId)
    if (!tool) return []
    const { placeId } = sighting
    const elsewhere = placeId !== null && !belongsIn(places, tool, placeId)
    return [{ sighting, tool, foundIn: elsewhere ? placePath(places, placeId) : '' }]
  })
}

/** @returns how the stocktake begun last stands; null: there was none. @param now UTC ISO text */
export const stocktakeStanding = async (db: Database, now: string): Promise<StocktakeStanding | null> => {
  const stocktake = await lastStocktake(db)
  if (stocktake === null) return null
  const places = await listRecords(db, placeStore)
  const place = await placeOf(db, stocktake)
  const ask = async (filter: Filter, limit: number) =>
    findTools(
      db,
      {
        search: '',
        sort: 'place',
        descending: false,
        offset: 0,
        limit,
        filter: { ...filter, ...(place && { placeId: place.id }) },
      },
      now,
    )
  const missing = await ask({ lent: 'here', notSeenSince: stocktake.startedAt }, MOST_MISSING)
  const { count } = await sightingsOf(db, stocktake)
    .select((row) => row.fn.countAll<number>().as('count'))
    .executeTakeFirstOrThrow()
  return {
    stocktake,
    within: place === null ? '' : placePath(places, place.id) || place.name,
    expected: (await ask({ lent: 'here' }, 0)).total,
    lent: (await ask({ lent: 'lent' }, 0)).total,
    seen: await seenIn(db, stocktake, places, now),
    seenTotal: count,
    missing: [...missing.tools],
    missingTotal: missing.total,
  }
}
