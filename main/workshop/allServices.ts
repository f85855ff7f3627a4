import { ok } from '../../geometry/result.ts'
import { benchLogStore } from '../benchLog/benchLog.ts'
import { benchLogServices, type SolveJob } from '../benchLog/benchLogServices.ts'
import type { makeCard } from '../cards/makeCard.ts'
import type { Stores } from '../database/undo.ts'
import { jobStore } from '../job/job.ts'
import { jobServices } from '../job/jobServices.ts'
import { labelServices } from '../labels/labelServices.ts'
import type { makeLabels } from '../labels/makeLabels.ts'
import { learningServices } from '../learning/learningServices.ts'
import { fixtureStore } from '../rack/fixture.ts'
import { recordServices } from '../rack/recordServices.ts'
import { stationStore } from '../rack/station.ts'
import { findTools, toolStore } from '../rack/tool.ts'
import type { Services } from '../services.ts'
import { settingsServices, settingsStore } from '../settings/settings.ts'
import type { makeTemplate } from '../template/makeTemplate.ts'
import type { Blobs } from './blobs.ts'
import { copyServices } from './copyServices.ts'
import type { Draw } from './paperMaker.ts'
import { paperServices } from './paperServices.ts'
import type { Workshop } from './workshop.ts'
import { changeServices, workshopServices } from './workshopServices.ts'

/** The log's records come out of JSON written by the same store, so their type is the store's own. */
const stores = {
  tool: toolStore,
  station: stationStore,
  fixture: fixtureStore,
  job: jobStore,
  benchLog: benchLogStore,
  settings: settingsStore,
} as unknown as Stores

/** What the services get done elsewhere. */
export interface Makers {
  readonly blobs: Blobs
  readonly solveJob: SolveJob
  readonly makeCard: Draw<Parameters<typeof makeCard>>
  readonly makeTemplate: Draw<Parameters<typeof makeTemplate>>
  readonly makeLabels: Draw<Parameters<typeof makeLabels>>
}

/** Every call's work, on one workshop. */
export const createServices = (
  workshop: Workshop,
  { blobs, solveJob, makeCard, makeTemplate, makeLabels }: Makers,
): Services => {
  const { desk } = workshop
  const tools = recordServices(desk, toolStore)
  const stations = recordServices(desk, stationStore)
  const fixtures = recordServices(desk, fixtureStore)
  return {
    'tool.list': async ({ search }) => ok(await desk.access.read((db) => findTools(db, search))),
    'tool.add': tools.add,
    'tool.edit': tools.edit,
    'tool.remove': tools.remove,
    'station.list': stations.list,
    'station.add': stations.add,
    'station.edit': stations.edit,
    'station.remove': stations.remove,
    'fixture.list': fixtures.list,
    'fixture.add': fixtures.add,
    'fixture.edit': fixtures.edit,
    'fixture.remove': fixtures.remove,
    ...jobServices(desk),
    ...benchLogServices(desk, solveJob),
    ...learningServices(desk),
    ...settingsServices(desk),
    ...changeServices(desk, stores),
    ...workshopServices(workshop),
    ...copyServices(workshop),
    ...paperServices(desk, blobs, makeCard, makeTemplate),
    ...labelServices(desk, blobs, makeLabels),
  }
}
