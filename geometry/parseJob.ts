import { JOB_VERSION, type Job, jobSchema } from './job.ts'
import { sweepsOf } from './motion.ts'
import { failed, ok, type Problem, problem, type Result } from './result.ts'
import { rimSpeedMPerS } from './units.ts'
import { problemsOf } from './zodProblems.ts'

/** Longest job text read: far above any job, far below what would hold a window up. */
export const MOST_JOB_BYTES = 5_000_000

/** Most nodes x steps of one job: about two minutes on an ordinary machine. */
const MOST_WORK = 4e9

/** Older versions of the job file, brought up; version 1 is the first, so nothing is older. Newer ones are refused. */
export const upgradeJob = (input: unknown): Result<unknown> => {
  const version = typeof input === 'object' && input !== null && 'version' in input ? input.version : undefined
  return typeof version === 'number' && version > JOB_VERSION
    ? failed(problem('versionTooNew', 'version', { version }))
    : ok(input)
}

const given = (...values: readonly (number | null)[]): number => values.filter((value) => value !== null).length

/** Rules between fields, that no single field can tell. */
const betweenFields = (job: Job): Problem[] => {
  const { aim, station, fixture, motion, grid } = job
  const found: Problem[] = []
  if (fixture.kind === 'swing' && fixture.swingRadiusMm === null)
    found.push(problem('swingNeedsRadius', 'fixture.swingRadiusMm'))
  if (motion.path === 'recorded' && motion.recordedPath === null)
    found.push(problem('recordedPathNeeded', 'motion.recordedPath'))
  const two = given(aim.bevelAngleDeg, aim.projectionMm, aim.barDistanceMm)
  if (two !== 2) found.push(problem('aimNeedsTwo', 'aim', { given: two }))
  const one = given(aim.reliefMm, aim.woodReliefMm, aim.edgeRadiusMm)
  if (one !== 1) found.push(problem('reliefNeedsOne', 'aim', { given: one }))
  const speed = rimSpeedMPerS(station.wheelDiameterMm, station.wheelSpeedRpm)
  if (speed > station.maxRimSpeedMPerS)
    found.push(
      problem('wheelTooFast', 'station.wheelSpeedRpm', {
        rimSpeedMPerS: speed,
        maxRimSpeedMPerS: station.maxRimSpeedMPerS,
      }),
    )
  if (sweepsOf(job) * motion.stepsPerSweep * grid.across * grid.through > MOST_WORK)
    found.push(problem('tooMuchWork', 'motion.sweeps'))
  return found
}

/** The job's door: version, schema, then the rules between fields. @returns the job with every default filled in */
export const parseJob = (input: unknown): Result<Job> => {
  const upgraded = upgradeJob(input)
  if (!upgraded.ok) return upgraded
  const parsed = jobSchema.safeParse(upgraded.value)
  if (!parsed.success) return failed(...problemsOf(parsed.error, upgraded.value))
  const problems = betweenFields(parsed.data)
  return problems.length === 0 ? ok(parsed.data) : failed(...problems)
}

/** The same from text. */
export const parseJobText = (text: string): Result<Job> => {
  if (text.length > MOST_JOB_BYTES) return failed(problem('jobTooLarge', '', { mostMb: MOST_JOB_BYTES / 1e6 }))
  let input: unknown
  try {
    input = JSON.parse(text)
  } catch (error) {
    return failed(problem('notJson', '', { detail: error instanceof Error ? error.message : String(error) }))
  }
  return parseJob(input)
}
