import { calibrationSchema } from '../../geometry/job.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { Fixture, Station, Tool } from '../contract/entities.ts'
import type { JobParts } from '../contract/jobParts.ts'
import { type Coded, listRecords, needRecord } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { learntOf } from '../learning/learnt.ts'
import { fixtureStore, stationStore } from '../rack/stores.ts'
import { toolStore } from '../rack/tool.ts'

import { lastUsed } from './job.ts'

/** A station and a fixture by id; left out: chosen. */
export interface Wanted {
  readonly stationId?: string | undefined
  readonly fixtureId?: string | undefined
}

/** The wanted one if it stands, else the one used last, else the first. */
const choose = <T extends Coded>(
  all: readonly T[],
  wanted: string | undefined,
  usedLast: readonly string[],
): T | undefined =>
  [wanted, ...usedLast].map((id) => all.find((record) => record.id === id)).find((record) => record !== undefined) ??
  all[0]

/** A curved edge wants a fixture that yaws and a straight one a fixture that does not, where the workshop has both. */
const suited = (fixtures: readonly Fixture[], tool: Tool, wanted: string | undefined): readonly Fixture[] => {
  const kind = tool.reliefMm > 0 ? 'steered' : 'square'
  const some = fixtures.filter((fixture) => fixture.kind === kind || fixture.id === wanted)
  return some.length > 0 ? some : fixtures
}

const chooseStation = async (db: Database, wanted: Wanted, usedLast: readonly string[]): Promise<Result<Station>> => {
  const station = choose(await listRecords(db, stationStore), wanted.stationId, usedLast)
  return station === undefined ? failed(problem('noStation', 'stationId')) : ok(station)
}

const chooseFixture = async (
  db: Database,
  tool: Tool,
  wanted: Wanted,
  usedLast: readonly string[],
): Promise<Result<Fixture>> => {
  const fixtures = suited(await listRecords(db, fixtureStore), tool, wanted.fixtureId)
  const fixture = choose(fixtures, wanted.fixtureId, usedLast)
  return fixture === undefined ? failed(problem('noFixture', 'fixtureId')) : ok(fixture)
}

/** What a fixture has learnt, once enough grinds stand behind it and it is let to learn; a figure beyond all is left out. */
const calibrationFor = async (db: Database, fixture: Fixture): Promise<Result<JobParts['calibration']>> => {
  if (fixture.learning === 'off' || fixture.kind !== 'steered') return ok(null)
  const learnt = await learntOf(db, fixture.id)
  if (!learnt.ok) return learnt
  const known = calibrationSchema.safeParse(learnt.value.calibration)
  return ok(learnt.value.code === 'learnt' && known.success ? known.data : null)
}

/**
 * The tool, station and fixture of a job as they stand today. A station or fixture that was removed since is replaced by
 * another, since a job cannot be ground with what is not there.
 */
export const partsOf = async (db: Database, toolId: string, wanted: Wanted): Promise<Result<JobParts>> => {
  const tool = await needRecord(db, toolStore, toolId, 'toolId')
  if (!tool.ok) return tool
  const used = await lastUsed(db)
  const station = await chooseStation(
    db,
    wanted,
    used.map(({ stationId }) => stationId),
  )
  if (!station.ok) return station
  const fixture = await chooseFixture(
    db,
    tool.value,
    wanted,
    used.map(({ fixtureId }) => fixtureId),
  )
  if (!fixture.ok) return fixture
  const calibration = await calibrationFor(db, fixture.value)
  if (!calibration.ok) return calibration
  return ok({ tool: tool.value, station: station.value, fixture: fixture.value, calibration: calibration.value })
}
