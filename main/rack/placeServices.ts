import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { CallInput } from '../contract/calls.ts'
import type { Place } from '../contract/people.ts'
import type { Desk } from '../database/desk.ts'
import { MOST_PLACES_DEEP } from '../database/migration5Search.ts'
import { listRecords } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import type { Services } from '../services.ts'
import { named, recordServices } from './recordServices.ts'
import { placeStore } from './stores.ts'

/** The places above one, nearest first. */
const above = (places: readonly Place[], parentId: string | null): readonly Place[] => {
  const parent = places.find(({ id }) => id === parentId)
  return parent ? [parent, ...above(places, parent.parentId)] : []
}

/** Levels that a place needs below it, itself included. */
const levels = (places: readonly Place[], id: string | null): number =>
  1 +
  Math.max(0, ...places.filter(({ parentId }) => id !== null && parentId === id).map((each) => levels(places, each.id)))

/** @param id the place that is moved; null: a new one. @returns whether it may stand there */
const mayStand = (places: readonly Place[], id: string | null, parentId: string | null): Result<null> => {
  if (parentId !== null && !places.some((place) => place.id === parentId))
    return failed(problem('noLongerThere', 'parentId'))
  const way = above(places, parentId)
  if (way.some((place) => place.id === id))
    return failed(problem('placesTooDeep', 'parentId', { most: MOST_PLACES_DEEP }))
  if (way.length + levels(places, id) > MOST_PLACES_DEEP)
    return failed(problem('placesTooDeep', 'parentId', { most: MOST_PLACES_DEEP }))
  return ok(null)
}

/** @returns how many tools belong in a place, and how many places stand in it */
const countIn = async (db: Database, id: string): Promise<{ readonly tools: number; readonly places: number }> => {
  const count = async (table: 'tool' | 'place', column: 'placeId' | 'parentId') => {
    const row = await db
      .selectFrom(table as 'tool')
      .select((each) => each.fn.countAll<number>().as('count'))
      .where(column as 'placeId', '=', id)
      .where('deletedAt', 'is', null)
      .executeTakeFirstOrThrow()
    return row.count
  }
  return { tools: await count('tool', 'placeId'), places: await count('place', 'parentId') }
}

type PlaceCalls = 'place.list' | 'place.add' | 'place.edit' | 'place.remove'

/** The calls of places: none stands in itself or too deep, and none is taken away while something is in it. */
export const placeServices = (desk: Desk): Pick<Services, PlaceCalls> => {
  const plain = recordServices(desk, placeStore)
  const check = async (id: string | null, { parentId = null }: CallInput<'place.add'>) =>
    mayStand(await desk.access.read((db) => listRecords(db, placeStore)), id, parentId)
  return {
    ...named('place', plain),
    'place.add': async (draft, context) => {
      const may = await check(null, draft)
      return may.ok ? plain.add(draft, context) : may
    },
    'place.edit': async (edit, context) => {
      const may = await check(edit.id, edit.draft)
      return may.ok ? plain.edit(edit, context) : may
    },
    'place.remove': async (seen, context) => {
      const inside = await desk.access.read((db) => countIn(db, seen.id))
      if (inside.tools + inside.places > 0) return failed(problem('placeInUse', 'id', { ...inside }))
      return plain.remove(seen, context)
    },
  }
}
