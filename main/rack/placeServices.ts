import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { Place } from '../contract/people.ts'
import type { Desk } from '../database/desk.ts'
import type { Database } from '../database/schema.ts'
import { parentsOf, placesTooDeep, tooDeep } from './placeDepth.ts'
import { recordServices } from './recordServices.ts'
import { placeStore } from './stores.ts'

/** None stands in itself, or too deep. */
const mayStand = async (db: Database, { id, parentId }: Place): Promise<Result<null>> => {
  const parents = await parentsOf(db)
  parents.set(id, parentId)
  return placesTooDeep(parents).has(id) ? failed(tooDeep()) : ok(null)
}

const countIn = async (db: Database, table: 'tool' | 'place', column: string, id: string): Promise<number> => {
  const { count } = await db
    .selectFrom(table)
    .select((each) => each.fn.countAll<number>().as('count'))
    .where(db.dynamic.ref(column), '=', id)
    .where('deletedAt', 'is', null)
    .executeTakeFirstOrThrow()
  return count
}

/** None is taken away while something is in it. */
const mayGo = async (db: Database, id: string): Promise<Result<null>> => {
  const tools = await countIn(db, 'tool', 'placeId', id)
  const places = await countIn(db, 'place', 'parentId', id)
  return tools + places > 0 ? failed(problem('placeInUse', 'id', { tools, places })) : ok(null)
}

/** The services of places. */
export const placeServices = (desk: Desk) => recordServices(desk, placeStore, { mayStand, mayGo })
