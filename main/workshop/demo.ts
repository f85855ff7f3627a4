import { z } from 'zod'
import fixtures from '../../assets/demo/fixtures.json' with { type: 'json' }
import readings from '../../assets/demo/readings.json' with { type: 'json' }
import stations from '../../assets/demo/stations.json' with { type: 'json' }
import tools from '../../assets/demo/tools.json' with { type: 'json' }
import { ok, type Result } from '../../geometry/result.ts'
import { benchLogStore } from '../benchLog/benchLog.ts'
import { groundByNothing } from '../benchLog/groundBy.ts'
import {
  benchLogDraftSchema,
  type Fixture,
  fixtureDraftSchema,
  type GroundBy,
  type Station,
  stationDraftSchema,
  type Tool,
  toolDraftSchema,
} from '../contract/entities.ts'
import type { Desk } from '../database/desk.ts'
import type { Coded, CodedStore } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { addRecord } from '../rack/recordServices.ts'
import { fixtureStore, loanStore, personStore, placeStore, stationStore } from '../rack/stores.ts'
import { toolStore } from '../rack/tool.ts'

/** A reading names its tool by the tool's place in the list, and what it was ground with likewise, since codes and ids are only given when it is filled in. */
const readingSchema = benchLogDraftSchema.omit({ toolId: true, jobId: true }).extend({
  tool: z.int().min(1),
  at: z.iso.datetime(),
  /** How it was ground, by the places of station and fixture in their lists. */
  ground: z
    .strictObject({
      station: z.int().min(1),
      fixture: z.int().min(1),
      sweeps: z.int(),
      freePlayMm: z.number(),
      modelReliefMm: z.number(),
    })
    .optional(),
})

/** A tool with the words for its place and for who has it, since those records are only made when it is filled in. */
const toolInPlaceSchema = toolDraftSchema.omit({ placeId: true }).extend({ place: z.string(), holder: z.string() })

/** When the demo's tools were lent. */
const LENT_AT = '2026-11-02T08:00:00.000Z'

/** The invented workshop that a first start shows. */
const demoWorkshop = () => ({
  tools: z.array(toolInPlaceSchema).parse(tools),
  stations: z.array(stationDraftSchema).parse(stations),
  fixtures: z.array(fixtureDraftSchema).parse(fixtures),
  readings: z.array(readingSchema).parse(readings),
})

/** Ids in order of need: the demo has the same ids on every machine, so that an address or a picture of it stays right. */
const countedIds = (family: number): (() => string) => {
  let count = 0
  return () => `de3${family}0000-0000-4000-8000-${String(++count).padStart(12, '0')}`
}

const isUntouched = async (db: Database): Promise<boolean> =>
  (await db.selectFrom('change').select('id').limit(1).executeTakeFirst()) === undefined

/** Ids in the order of the lists. */
interface DemoIds {
  readonly tools: readonly string[]
  readonly stations: readonly string[]
  readonly fixtures: readonly string[]
}

const idAt = (ids: readonly string[], place: number): string => {
  const id = ids[place - 1]
  if (id === undefined) throw new Error(`a reading names record ${place}, which the demo has not`)
  return id
}

type Reading = z.output<typeof readingSchema>

const groundByOf = (ground: Reading['ground'], { stations, fixtures }: DemoIds): GroundBy =>
  ground === undefined
    ? groundByNothing
    : {
        stationId: idAt(stations, ground.station),
        fixtureId: idAt(fixtures, ground.fixture),
        task: 'reshape',
        sweeps: ground.sweeps,
        freePlayLeftMm: ground.freePlayMm,
        freePlayRightMm: ground.freePlayMm,
        modelReliefMm: ground.modelReliefMm,
      }

const addReadings = async (db: Database, desk: Desk, ids: DemoIds): Promise<void> => {
  for (const { tool, ground, ...reading } of demoWorkshop().readings) {
    const kept = { job: null, report: null, engineVersion: null, jobId: null, ...groundByOf(ground, ids) }
    await addRecord(db, desk, benchLogStore, { ...reading, ...kept, toolId: idAt(ids.tools, tool) }, true)
  }
}

/** Adds records of one kind. @returns their ids */
const addAll = async <T extends Coded>(
  db: Database,
  desk: Desk,
  store: CodedStore<T>,
  drafts: readonly Omit<T, keyof Coded>[],
): Promise<Result<readonly string[]>> => {
  const ids: string[] = []
  for (const draft of drafts) {
    const made = await addRecord(db, desk, store, draft, true)
    if (!made.ok) return made
    ids.push(made.value.value.id)
  }
  return ok(ids)
}

/** Records that came later have ids of their own family, so that those before keep theirs. */
const beside = (desk: Desk, family: number): Desk => ({ ...desk, newId: countedIds(family) })

type ToolInPlace = z.output<typeof toolInPlaceSchema>

/** Adds a record for each different word in a column. @returns their ids by word */
const namesOf = async <T extends Coded & { name: string }>(
  db: Database,
  desk: Desk,
  store: CodedStore<T>,
  tools: readonly ToolInPlace[],
  column: 'place' | 'holder',
  rest: Omit<T, keyof Coded | 'name'>,
): Promise<Result<ReadonlyMap<string, string>>> => {
  const names = [...new Set(tools.map((tool) => tool[column]).filter((word) => word !== ''))]
  const drafts = names.map((name) => ({ ...rest, name })) as unknown as readonly Omit<T, keyof Coded>[]
  const ids = await addAll(db, desk, store, drafts)
  return ids.ok ? ok(new Map(names.map((name, i) => [name, ids.value[i] as string]))) : ids
}

const lend = async (
  db: Database,
  desk: Desk,
  tools: readonly ToolInPlace[],
  toolIds: readonly string[],
): Promise<Result<readonly string[]>> => {
  const people = await namesOf(db, desk, personStore, tools, 'holder', { apprentice: 'no' })
  if (!people.ok) return people
  const loans = tools.flatMap(({ holder }, i) => {
    const personId = people.value.get(holder)
    if (personId === undefined) return []
    return [{ toolId: toolIds[i] as string, personId, lentAt: LENT_AT, dueBack: null, returnedAt: null, note: '' }]
  })
  return addAll(db, desk, loanStore, loans)
}

const fill = async (db: Database, desk: Desk): Promise<Result<null>> => {
  if (!(await isUntouched(db))) return ok(null)
  const demo = demoWorkshop()
  const stations = await addAll<Station>(db, desk, stationStore, demo.stations)
  if (!stations.ok) return stations
  const fixtures = await addAll<Fixture>(db, desk, fixtureStore, demo.fixtures)
  if (!fixtures.ok) return fixtures
  const places = await namesOf(db, beside(desk, 1), placeStore, demo.tools, 'place', { parentId: null, note: '' })
  if (!places.ok) return places
  const tools = await addAll<Tool>(
    db,
    desk,
    toolStore,
    demo.tools.map(({ place, holder: _, ...draft }) => ({ ...draft, placeId: places.value.get(place) ?? null })),
  )
  if (!tools.ok) return tools
  const lent = await lend(db, beside(desk, 2), demo.tools, tools.value)
  if (!lent.ok) return lent
  await addReadings(db, desk, { tools: tools.value, stations: stations.value, fixtures: fixtures.value })
  return ok(null)
}

/** Fills an untouched file with the demo workshop, all or nothing; a file in use is left as it is. */
export const fillDemo = (desk: Desk): Promise<Result<null>> => {
  const filling = { ...desk, newId: countedIds(0) }
  return desk.access.write((db) => fill(db, filling))
}
