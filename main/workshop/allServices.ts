import { ok } from '../../geometry/result.ts'
import { benchLogStore } from '../benchLog/benchLog.ts'
import { benchLogServices, type SolveJob } from '../benchLog/benchLogServices.ts'
import type { MadeCards, makeCard, makeCards } from '../cards/makeCard.ts'
import type { Stores } from '../database/undo.ts'
import { inOutServices } from '../inOut/inOutServices.ts'
import { jobStore } from '../job/job.ts'
import { jobServices } from '../job/jobServices.ts'
import { labelServices } from '../labels/labelServices.ts'
import type { makeLabels } from '../labels/makeLabels.ts'
import { learningServices } from '../learning/learningServices.ts'
import { learnerServices } from '../lessons/learnerServices.ts'
import { lessonPaperServices } from '../lessons/lessonPaperServices.ts'
import { lessonServices } from '../lessons/lessonServices.ts'
import { ownLessonStore } from '../lessons/lessonStore.ts'
import type { makeWorksheet } from '../lessons/makeWorksheet.ts'
import { openedServices } from '../opened/openedServices.ts'
import { personServices } from '../people/personServices.ts'
import { photoServices } from '../photos/photoServices.ts'
import { ownFieldServices, purposeServices } from '../rack/extrasServices.ts'
import { findTools, oneTool } from '../rack/finding/findTools.ts'
import { standingOf } from '../rack/finding/standing.ts'
import { manyServices } from '../rack/many/manyServices.ts'
import { placeServices } from '../rack/placeServices.ts'
import { named, recordServices } from '../rack/recordServices.ts'
import { stationServices } from '../rack/stationServices.ts'
import {
  dressingStore,
  fixtureStore,
  happeningStore,
  keptFilterStore,
  loanStore,
  ownFieldStore,
  personStore,
  photoStore,
  placeStore,
  purposeStore,
  queueEntryStore,
  sightingStore,
  stationStore,
  stocktakeStore,
  toolTemplateStore,
} from '../rack/stores.ts'
import { toolStore } from '../rack/tool.ts'
import { reportServices } from '../reports/reportServices.ts'
import type { Reports } from '../reports/reports.ts'
import type { Services } from '../services.ts'
import { settingsServices, settingsStore } from '../settings/settings.ts'
import type { makeTemplate } from '../template/makeTemplate.ts'
import { dayPaperServices } from '../work/dayPaperServices.ts'
import { errandServices } from '../work/errandServices.ts'
import { happeningServices } from '../work/happeningServices.ts'
import { lifeOf } from '../work/life.ts'
import { loanServices } from '../work/loanServices.ts'
import type { makeDaySheet } from '../work/makeDaySheet.ts'
import { queueServices } from '../work/queueServices.ts'
import { stocktakeServices } from '../work/stocktakeServices.ts'
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
  place: placeStore,
  person: personStore,
  loan: loanStore,
  happening: happeningStore,
  dressing: dressingStore,
  photo: photoStore,
  purpose: purposeStore,
  ownField: ownFieldStore,
  keptFilter: keptFilterStore,
  toolTemplate: toolTemplateStore,
  stocktake: stocktakeStore,
  sighting: sightingStore,
  queueEntry: queueEntryStore,
  lesson: ownLessonStore,
  settings: settingsStore,
} as unknown as Stores

/** What the services get done elsewhere. */
export interface Makers {
  readonly blobs: Blobs
  readonly reports: Reports
  readonly solveJob: SolveJob
  readonly makeCard: Draw<Parameters<typeof makeCard>>
  readonly makeCards: Draw<Parameters<typeof makeCards>, MadeCards>
  readonly makeDaySheet: Draw<Parameters<typeof makeDaySheet>>
  readonly makeTemplate: Draw<Parameters<typeof makeTemplate>>
  readonly makeWorksheet: Draw<Parameters<typeof makeWorksheet>>
  readonly makeLabels: Draw<Parameters<typeof makeLabels>>
}

/** Every call's work, on one workshop. */
export const createServices = (
  workshop: Workshop,
  { blobs, reports, solveJob, makeCard, makeCards, makeDaySheet, makeTemplate, makeLabels, makeWorksheet }: Makers,
): Services => {
  const { desk } = workshop
  const now = () => desk.now().toISOString()
  const { list: _, ...toolCommands } = recordServices(desk, toolStore)
  return {
    ...named('tool', toolCommands),
    'tool.find': async (asked) => ok(await desk.access.read((db) => findTools(db, asked, now()))),
    'tool.one': async (which) => ok(await desk.access.read((db) => oneTool(db, which, now()))),
    'tool.life': async ({ id }) => ok(await desk.access.read((db) => lifeOf(db, id))),
    'tool.standing': async () => ok(await desk.access.read((db) => standingOf(db, now()))),
    ...manyServices(desk),
    ...stationServices(desk),
    ...named('fixture', recordServices(desk, fixtureStore)),
    ...named('place', placeServices(desk)),
    ...loanServices(desk),
    ...errandServices(desk),
    ...queueServices(desk),
    ...stocktakeServices(desk),
    ...personServices(workshop),
    ...named('purpose', purposeServices(desk)),
    ...named('ownField', ownFieldServices(desk)),
    ...named('keptFilter', recordServices(desk, keptFilterStore)),
    ...named('toolTemplate', recordServices(desk, toolTemplateStore)),
    ...happeningServices(desk),
    ...jobServices(desk),
    ...benchLogServices(desk, solveJob),
    ...learningServices(desk),
    ...lessonServices(desk, blobs),
    ...learnerServices(desk),
    ...lessonPaperServices(desk, blobs, makeWorksheet),
    ...settingsServices(desk),
    ...changeServices(desk, stores),
    ...workshopServices(workshop),
    ...copyServices(workshop),
    ...inOutServices(workshop, blobs),
    ...openedServices(),
    ...reportServices(reports),
    ...photoServices(desk, blobs),
    ...paperServices(desk, blobs, makeCard, makeTemplate),
    ...dayPaperServices(desk, blobs, makeCards, makeDaySheet),
    ...labelServices(desk, blobs, makeLabels),
  }
}
