import { failed, ok, problem } from '../../geometry/result.ts'
import { asOne } from '../database/change.ts'
import type { Desk } from '../database/desk.ts'
import { needRecord } from '../database/recordStore.ts'
import { editRecord } from '../rack/recordServices.ts'
import { stocktakeStore } from '../rack/stores.ts'
import type { Services } from '../services.ts'
import { beginStocktake, seeTool, stocktakeStanding } from './stocktake.ts'

/** The calls of going round to see what is there. */
export const stocktakeServices = (
  desk: Desk,
): Pick<Services, 'stocktake.last' | 'stocktake.begin' | 'stocktake.see' | 'stocktake.end'> => ({
  'stocktake.last': async () => ok(await desk.access.read((db) => stocktakeStanding(db, desk.now().toISOString()))),
  'stocktake.begin': async ({ placeId }, context) => {
    const made = await desk.access.write((db) => beginStocktake(db, desk, placeId))
    if (made.ok) context.changed('stocktake', [made.value.value.id])
    return made
  },
  'stocktake.see': async (given, context) => {
    const made = await desk.access.write((db) => asOne(db, () => seeTool(db, desk, given)))
    if (made.ok && made.value.changeId > 0) context.changed('sighting', [made.value.value.id])
    return made
  },
  'stocktake.end': async (seen, context) => {
    const made = await desk.access.write(async (db) => {
      const stocktake = await needRecord(db, stocktakeStore, seen.id)
      if (stocktake.ok && stocktake.value.endedAt !== null) return failed(problem('stocktakeEnded', 'id'))
      return editRecord(db, desk, stocktakeStore, seen, { endedAt: desk.now().toISOString() })
    })
    if (made.ok) context.changed('stocktake', [seen.id])
    return made
  },
})
