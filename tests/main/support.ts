import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Report } from '../../geometry/report.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { CallInput, CallName, CallOutput } from '../../main/contract/calls.ts'
import type { FixtureDraft, StationDraft, ToolDraft, ToolLine } from '../../main/contract/entities.ts'
import type { HostEvent } from '../../main/contract/events.ts'
import { createReports } from '../../main/reports/reports.ts'
import { createRouter } from '../../main/router.ts'
import { createServices, type Makers } from '../../main/workshop/allServices.ts'
import { createBlobs } from '../../main/workshop/blobs.ts'
import { noteChoice } from '../../main/workshop/choice.ts'
import { readsThrough } from '../../main/workshop/readThrough.ts'
import { openWorkshop, type Workshop } from '../../main/workshop/workshop.ts'

/** A clock that moves one second at every look, so that times tell the order. */
export const tickingClock = (start = '2026-01-05T08:00:00.000Z') => {
  let ms = Date.parse(start)
  return () => {
    ms += 1000
    return new Date(ms)
  }
}

export const countedIds = () => {
  let count = 0
  return () => `aaaaaaaa-0000-4000-8000-${String(++count).padStart(12, '0')}`
}

/** A folder for one test, and a way to be rid of it. */
export const temporaryFolder = () => {
  const folder = mkdtempSync(join(tmpdir(), 'camberwright-'))
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) }
}

export const toolDraft: ToolDraft = {
  name: 'Try plane iron',
  kind: 'try',
  maker: '',
  widthMm: 60,
  thicknessMm: 3,
  seatAngleDeg: 45,
  bevelSide: 'down',
  bevelAngleDeg: 25,
  honedBevelDeg: 30,
  backBevelDeg: 0,
  capSetbackMm: null,
  projectionMm: 130,
  reliefMm: 0.14,
  shavingDepthMm: 0.08,
  dotCorner: 'left',
  steel: '',
  temperLimitC: null,
  taperDeg: 0,
  lengthLeftMm: null,
  condition: 'good',
  placeId: null,
  curves: [],
  own: {},
  dueDays: null,
  dueHonings: null,
  note: '',
}

export const stationDraft: StationDraft = {
  name: 'Wet wheel',
  wheelDiameterMm: 250,
  wheelWidthMm: 50,
  wheelSpeedRpm: 90,
  maxRimSpeedMPerS: 20,
  barDiameterMm: 12,
  barOffsetMm: 0,
  barMeasure: 'gap',
  barPlace: 'above',
  barMount: '',
  wheelGrit: '',
  leastDiameterMm: null,
  rotation: 'intoEdge',
  cooling: 'wet',
  measuredAt: '2026-01-02T07:00:00.000Z',
  note: '',
}

export const steeredDraft: FixtureDraft = {
  name: 'Steered',
  kind: 'steered',
  seatOffsetMm: 15,
  seatsOn: 'back',
  guideArmMm: 75,
  screwPitchMm: 0.8,
  pivotSetbackMm: 0,
  pivotOffsetMm: 0,
  learning: 'on',
  note: '',
}

export const squareDraft: FixtureDraft = {
  ...steeredDraft,
  name: 'Square',
  kind: 'square',
  guideArmMm: null,
  screwPitchMm: null,
}

/** A report is kept as it is and never read here, so a mark is enough. */
/** The model says 0.3 mm of every grind. */
export const markedReport = { engineVersion: 'test', grind: { reliefLeftMm: 0.3, reliefRightMm: 0.3 } } as Report

const makersWith = (changes: Partial<Makers>, dataDir: string, now: () => Date): Makers => ({
  blobs: createBlobs(),
  reports: createReports(dataDir, now),
  solveJob: () => ok(markedReport),
  makeCard: async () => failed(problem('noCardHere')),
  makeCards: async () => failed(problem('noCardHere')),
  makeDaySheet: async () => failed(problem('noSheetHere')),
  makeTemplate: async () => failed(problem('noTemplateHere')),
  makeLabels: async () => failed(problem('noLabelsHere')),
  makeWorksheet: async () => failed(problem('noWorksheetHere')),
  ...changes,
})

/** The whole data layer behind its router, on real files, without the worker around it. */
export interface Bench {
  readonly workshop: Workshop
  readonly events: HostEvent[]
  readonly blobs: Makers['blobs']
  call<N extends CallName>(name: N, input: CallInput<N>, callId?: string): Promise<Result<CallOutput<N>>>
  /** As `call`, for calls that must succeed. */
  done<N extends CallName>(name: N, input: CallInput<N>): Promise<CallOutput<N>>
  raw(name: string, input: unknown): Promise<Result<unknown>>
  cancel(callId: string): void
}

export const openBench = async (
  dataDir: string,
  changes: Partial<Makers> = {},
  newId = countedIds(),
  now: () => Date = tickingClock(),
): Promise<Bench> => {
  const opened = await openWorkshop({ dataDir, who: 'tester', now, newId, log: () => undefined })
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
  const events: HostEvent[] = []
  const makers = makersWith(changes, dataDir, now)
  const router = createRouter(createServices(opened.value, makers), {
    onFault: () => undefined,
    readsThrough: () => readsThrough(opened.value.desk),
  })
  const raw = (name: string, input: unknown, callId = 'c1') =>
    router.handle(name, input, callId, (event) => events.push(event))
  const call: Bench['call'] = async (name, input, callId) =>
    (await raw(name, input, callId)) as Result<CallOutput<typeof name>>
  const done: Bench['done'] = async (name, input) => {
    const result = await call(name, input)
    if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.problems)}`)
    return result.value
  }
  return { workshop: opened.value, events, blobs: makers.blobs, call, done, raw, cancel: router.cancel }
}

/** A bench on the user's own rack, empty the first time; the demo is never made. */
export const openOwnBench = (
  dataDir: string,
  changes: Partial<Makers> = {},
  newId = countedIds(),
  now: () => Date = tickingClock(),
): Promise<Bench> => {
  noteChoice(dataDir, { rack: 'own' })
  return openBench(dataDir, changes, newId, now)
}

/** @returns the codes of a failed result, or none */
export const codesOf = (result: Result<unknown>): string[] => (result.ok ? [] : result.problems.map(({ code }) => code))

/** @returns the rack's tools, or those found by words */
export const toolsOf = async (bench: Pick<Bench, 'done'>, search = ''): Promise<readonly ToolLine[]> =>
  (await bench.done('tool.find', { search })).tools
