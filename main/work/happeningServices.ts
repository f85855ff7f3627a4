import { ok } from '../../geometry/result.ts'
import type { Desk } from '../database/desk.ts'
import { listOf } from '../database/recordStore.ts'
import { lastAtTheBench } from '../people/atTheBench.ts'
import { named, recordServices } from '../rack/recordServices.ts'
import { happeningStore } from '../rack/stores.ts'
import type { Services } from '../services.ts'

/** The calls of what happens to edges. Where nobody says who noted it, it is whoever was at the bench last. */
export const happeningServices = (desk: Desk): Pick<Services, `happening.${'list' | 'add' | 'edit' | 'remove'}`> => {
  const records = recordServices(desk, happeningStore)
  return {
    ...named('happening', records),
    'happening.list': async ({ toolId }) =>
      ok(await desk.access.read((db) => listOf(db, happeningStore, { column: 'toolId', id: toolId, by: 'at' }))),
    'happening.add': async (draft, context) => {
      const who = draft.who === '' ? await desk.access.read(lastAtTheBench) : draft.who
      return records.add({ ...draft, who }, context)
    },
  }
}
