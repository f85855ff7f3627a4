import { ok } from '../../geometry/result.ts'
import type { Desk } from '../database/desk.ts'
import type { Services } from '../services.ts'
import { learntOf } from './learnt.ts'
import { stationRemovalOf } from './removal.ts'

/** What the bench log teaches. */
export const learningServices = (desk: Desk): Pick<Services, 'fixture.learnt' | 'station.removal'> => ({
  'fixture.learnt': ({ id }) => desk.access.read((db) => learntOf(db, id)),
  'station.removal': async ({ id }) => ok(await desk.access.read((db) => stationRemovalOf(db, id))),
})
