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

/** What the workshop grinds with, read once for many tools. */
export interface Serving {
  readonly stations: readonly Station[]
  readonly fixtures: readonly Fixture[]
  /** Ids in jobs, used last first. */
  readonly used: Awaited<ReturnType<typeof lastUsed>>
}

/** @returns all stations and fixtures, and which were used last */
export const servingOf = async (db: Database): Promise<Serving> => ({
  stations: await listRecords(db, stationStore),
  fixtures: await listRecords(db, fixtureStore),
  used: await lastUsed(db),
})

/** @returns the station and fixture that a tool is ground with, or the problem that there is none */
export const chooseServing = (
  { stations, fixtures, used }: Serving,
  tool: Tool,
  wanted: Wanted,
): Result<Pick<JobParts, 'station' | 'fixture'>> => {
  const station = choose(
    stations,
    wanted.stationId,
    used.map(({ stationId }) => stationId),
  )
  if (station === undefined) return failed(problem('noStation', 'stationId'))
  const fixture = choose(
    suited(fixtures, tool, wanted.fixtureId),
    wanted.fixtureId,
    used.map(({ fixtureId }) => fixtureId),
  )
  return fixture === undefined ? failed(problem('noFixture', 'fixtureId')) : ok({ station, fixture })
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
  const chosen = chooseServing(await servingOf(db), tool.value, wanted)
  if (!chosen.ok) return chosen
  const calibration = await calibrationFor(db, chosen.value.fixture)
  if (!calibration.ok) return calibration
  return ok({ tool: tool.value, ...chosen.value, calibration: calibration.value })
}
