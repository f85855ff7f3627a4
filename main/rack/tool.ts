import type { Tool } from '../contract/entities.ts'
import { jsonStore } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'

/** Tools of the rack. */
export const toolStore = jsonStore<Tool>('tool', ({ name }) => name, ['curves', 'own'], {
  placeId: 'place',
})

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
