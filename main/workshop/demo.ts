import { z } from 'zod'
import fixtures from '../../assets/demo/fixtures.json' with { type: 'json' }
import readings from '../../assets/demo/readings.json' with { type: 'json' }
import stations from '../../assets/demo/stations.json' with { type: 'json' }
import tools from '../../assets/demo/tools.json' with { type: 'json' }
import { ok, type Result } from '../../geometry/result.ts'
import { benchLogStore } from '../benchLog/benchLog.ts'
import { benchLogDraftSchema, fixtureDraftSchema, stationDraftSchema, toolDraftSchema } from '../contract/entities.ts'
import type { Desk } from '../database/desk.ts'
import type { Database } from '../database/schema.ts'
import { fixtureStore } from '../rack/fixture.ts'
import { addRecord } from '../rack/recordServices.ts'
import { stationStore } from '../rack/station.ts'
import { toolStore } from '../rack/tool.ts'

/** A reading names its tool by the tool's place in the list, since codes and ids are only given when it is filled in. */
const readingSchema = benchLogDraftSchema.omit({ toolId: true, jobId: true }).extend({
  tool: z.int().min(1),
  at: z.iso.datetime(),
})

/** The invented workshop that a first start shows. */
const demoWorkshop = () => ({
  tools: z.array(toolDraftSchema).parse(tools),
  stations: z.array(stationDraftSchema).parse(stations),
  fixtures: z.array(fixtureDraftSchema).parse(fixtures),
  readings: z.array(readingSchema).parse(readings),
})

/** Ids in order of need: the demo has the same ids on every machine, so that an address or a picture of it stays right. */
const countedIds = (): (() => string) => {
  let count = 0
  return () => `de300000-0000-4000-8000-${String(++count).padStart(12, '0')}`
}

const isUntouched = async (db: Database): Promise<boolean> =>
  (await db.selectFrom('change').select('id').limit(1).executeTakeFirst()) === undefined

const addReadings = async (db: Database, desk: Desk, toolIds: readonly string[]): Promise<void> => {
  for (const { tool, ...reading } of demoWorkshop().readings) {
    const toolId = toolIds[tool - 1]
    if (toolId === undefined) throw new Error(`reading of tool ${tool}, which the demo has not`)
    const kept = { job: null, report: null, engineVersion: null, jobId: null }
    await addRecord(db, desk, benchLogStore, { ...reading, ...kept, toolId }, true)
  }
}

const fill = async (db: Database, desk: Desk): Promise<Result<null>> => {
  if (!(await isUntouched(db))) return ok(null)
  const { tools, stations, fixtures } = demoWorkshop()
  const toolIds: string[] = []
  for (const station of stations) await addRecord(db, desk, stationStore, station, true)
  for (const fixture of fixtures) await addRecord(db, desk, fixtureStore, fixture, true)
  for (const tool of tools) {
    const made = await addRecord(db, desk, toolStore, tool, true)
    if (!made.ok) return made
    toolIds.push(made.value.value.id)
  }
  await addReadings(db, desk, toolIds)
  return ok(null)
}

/** Fills an untouched file with the demo workshop, all or nothing; a file in use is left as it is. */
export const fillDemo = (desk: Desk): Promise<Result<null>> => {
  const filling = { ...desk, newId: countedIds() }
  return desk.access.write((db) => fill(db, filling))
}
