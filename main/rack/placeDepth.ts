import type { Problem } from '../../geometry/result.ts'
import { problem } from '../../geometry/result.ts'
import { MOST_PLACES_DEEP } from '../database/migration5Search.ts'
import type { Database } from '../database/schema.ts'

/** The place that each place stands in; null: none. */
export type Parents = Map<string, string | null>

/** @returns the places that stand, by what they stand in */
export const parentsOf = async (db: Database): Promise<Parents> => {
  const rows = await db.selectFrom('place').select(['id', 'parentId']).where('deletedAt', 'is', null).execute()
  return new Map(rows.map(({ id, parentId }) => [id, parentId]))
}

/** The way from a place to the outermost; too long where places stand in a circle. */
const wayOut = (id: string, parents: Parents): readonly string[] => {
  const way = [id]
  for (let at = parents.get(id); at && way.length <= MOST_PLACES_DEEP; at = parents.get(at)) way.push(at)
  return way
}

/** @returns every place on a way that is too long */
export const placesTooDeep = (parents: Parents): ReadonlySet<string> =>
  new Set(
    [...parents.keys()]
      .map((id) => wayOut(id, parents))
      .filter((way) => way.length > MOST_PLACES_DEEP)
      .flat(),
  )

/** What is said of a place that would stand too deep or in itself. */
export const tooDeep = (): Problem => problem('placesTooDeep', 'parentId', { most: MOST_PLACES_DEEP })
