import type { Job } from '../../geometry/job.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import type { Result } from '../../geometry/result.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import type { Fixture, Station } from '../../main/contract/entities.ts'
import { fixtureOf, motionFor, stationOf } from '../../main/contract/jobParts.ts'

/**
 * @returns the job at another station or with another fixture, to be checked before it is kept there. The host does the
 * same when it keeps it, so what is checked here is what will be solved.
 */
export const withPlaces = (job: Job, station: Station | undefined, fixture: Fixture | undefined): Job => ({
  ...job,
  station: station ? stationOf(station) : job.station,
  fixture: fixture ? { ...job.fixture, ...fixtureOf(fixture) } : job.fixture,
  motion: fixture ? motionFor(job.motion, fixture) : job.motion,
})

/** @returns a job that was let in, where its triangle closes too */
export const closing = (parsed: Result<Job>): Result<Job> => {
  if (!parsed.ok) return parsed
  const triangle = setUpOf(parsed.value)
  return triangle.ok ? parsed : triangle
}

/** The door for an edited job: its schema, the rules between fields, and whether the triangle closes. */
export const checkJob = (input: unknown): Result<Job> => closing(parseJob(input))

/** @returns whether two jobs say the same; both come from one schema, so their keys stand in one order */
export const sameJob = (a: Job, b: Job): boolean => JSON.stringify(a) === JSON.stringify(b)
