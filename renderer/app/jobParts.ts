import type { Job } from '../../geometry/job.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { ok, type Result } from '../../geometry/result.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import type { Fixture, Station } from '../../main/contract/entities.ts'

/**
 * @returns the job at another station or with another fixture, to be checked before it is kept there. The host does the
 * same when it keeps it, so what is checked here is what will be solved.
 */
export const withPlaces = (job: Job, station: Station | undefined, fixture: Fixture | undefined): Job => ({
  ...job,
  station: station ? stationOf(station) : job.station,
  fixture: fixture ? { ...job.fixture, ...fixtureOf(fixture) } : job.fixture,
  motion: fixture?.kind === 'square' ? { ...job.motion, ...noStops } : job.motion,
})

const noStops = { stopTurnsLeft: 0, stopTurnsRight: 0, yawLeftDeg: null, yawRightDeg: null }
const noArm = { guideArmMm: null, screwPitchMm: null, pivotSetbackMm: 0, pivotOffsetMm: 0 }

const stationOf = (station: Station): Job['station'] => ({
  wheelDiameterMm: station.wheelDiameterMm,
  wheelWidthMm: station.wheelWidthMm,
  wheelSpeedRpm: station.wheelSpeedRpm,
  maxRimSpeedMPerS: station.maxRimSpeedMPerS,
  barDiameterMm: station.barDiameterMm,
  barOffsetMm: station.barOffsetMm,
  grindingRatio: null,
})

const fixtureOf = (fixture: Fixture) => {
  const { kind, seatOffsetMm, guideArmMm, screwPitchMm, pivotSetbackMm, pivotOffsetMm } = fixture
  if (kind === 'square') return { kind, seatOffsetMm, ...noArm }
  return { kind, seatOffsetMm, guideArmMm, screwPitchMm, pivotSetbackMm, pivotOffsetMm }
}

/** The door for an edited job: its schema, the rules between fields, and whether the triangle closes. */
export const checkJob = (input: unknown): Result<Job> => {
  const parsed = parseJob(input)
  if (!parsed.ok) return parsed
  const triangle = setUpOf(parsed.value)
  return triangle.ok ? ok(parsed.value) : triangle
}

/** @returns whether two jobs say the same; both come from one schema, so their keys stand in one order */
export const sameJob = (a: Job, b: Job): boolean => JSON.stringify(a) === JSON.stringify(b)
