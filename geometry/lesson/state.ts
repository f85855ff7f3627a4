import type { Job } from '../job.ts'
import { parseJob } from '../parseJob.ts'
import { type QuantityPath, quantities } from '../quantities.ts'
import { failed, ok, type Problem, problem, type Result } from '../result.ts'
import { problemsOf } from '../zodProblems.ts'
import { type Bench, benchQuantities, benchSchema } from './bench.ts'
import type { Change, Lesson } from './lesson.ts'
import { variation } from './vary.ts'

/** The job and what lies beside it. */
export interface LessonState {
  readonly job: Job
  readonly bench: Bench
}

/** A state before its doors: plain objects that changes are written into. */
interface Draft {
  readonly job: Record<string, unknown>
  readonly bench: Record<string, unknown>
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Sections of the job that changes can reach. */
const sections = ['blade', 'station', 'fixture', 'aim', 'motion', 'errors', 'tolerances', 'grid']

/** The setting that follows the first, of which a lesson has one at most. */
const SECOND = 'second'

const withSecond = (draft: Draft, key: string, value: Change[string]): Draft => {
  const motion = isRecord(draft.job.motion) ? draft.job.motion : {}
  const [before] = Array.isArray(motion.schedule) ? motion.schedule : []
  const schedule = [{ ...(isRecord(before) ? before : {}), [key]: value }]
  return { ...draft, job: { ...draft.job, motion: { ...motion, schedule } } }
}

const changed = (draft: Draft, place: string, value: Change[string]): Result<Draft> => {
  const [section = '', key = '', ...rest] = place.split('.')
  if (key === '' || rest.length > 0) return failed(problem('lessonPlaceUnknown', '', { place }))
  if (section === 'bench') return ok({ ...draft, bench: { ...draft.bench, [key]: value } })
  if (section === SECOND) return ok(withSecond(draft, key, value))
  if (!sections.includes(section)) return failed(problem('lessonPlaceUnknown', '', { place }))
  const before = draft.job[section]
  return ok({ ...draft, job: { ...draft.job, [section]: { ...(isRecord(before) ? before : {}), [key]: value } } })
}

const changedBy = (draft: Draft, change: Change): Result<Draft> => {
  let now: Result<Draft> = ok(draft)
  for (const [place, value] of Object.entries(change)) now = now.ok ? changed(now.value, place, value) : now
  return now
}

const letIn = ({ job, bench }: Draft): Result<LessonState> => {
  const parsedJob = parseJob(job)
  const parsedBench = benchSchema.safeParse(bench)
  const problems: Problem[] = []
  if (!parsedJob.ok) problems.push(...parsedJob.problems.map((found) => ({ ...found, path: `job.${found.path}` })))
  if (!parsedBench.success)
    problems.push(...problemsOf(parsedBench.error, bench).map((found) => ({ ...found, path: `bench.${found.path}` })))
  return parsedJob.ok && parsedBench.success
    ? ok({ job: parsedJob.value, bench: parsedBench.data })
    : failed(...problems)
}

const stateWith = (lesson: Lesson, changes: readonly Change[], seed: number): Result<LessonState> => {
  let draft: Result<Draft> = ok({ job: lesson.job, bench: {} })
  const bench = Object.fromEntries(Object.entries(lesson.bench).map(([key, value]) => [`bench.${key}`, value]))
  for (const change of [bench, variation(lesson, seed), ...changes])
    draft = draft.ok ? changedBy(draft.value, change) : draft
  return draft.ok ? letIn(draft.value) : draft
}

/**
 * The state of a step: the beginning, what every step up to it sets, then what was moved in it.
 * @param step from 0
 * @param seed 0: as the lesson has it; else the varied places get other values
 */
export const stateOf = (lesson: Lesson, step: number, moved: Change = {}, seed = 0): Result<LessonState> =>
  stateWith(lesson, [...lesson.steps.slice(0, step + 1).map(({ set }) => set), moved], seed)

/** The state of a case. */
export const stateOfCase = (lesson: Lesson, name: string, seed = 0): Result<LessonState> =>
  stateWith(lesson, [lesson.cases[name] ?? {}], seed)

/** @returns the quantity that stands at a place; null where no figure of the table does */
export const quantityOfPlace = (place: string): QuantityPath | null => {
  const [section = '', key = ''] = place.split('.')
  if (section === 'bench') return (benchQuantities as Record<string, QuantityPath>)[key] ?? null
  if (section === SECOND) return key in quantities.motion ? (`motion.${key}` as QuantityPath) : null
  const table = (quantities as unknown as Record<string, Record<string, unknown>>)[section]
  return sections.includes(section) && table && key in table ? (place as QuantityPath) : null
}

/** @returns what stands at a place of a state (`motion.sweeps`, `bench.leverDeg`); null where no figure does */
export const valueAt = (state: LessonState, place: string): number | null => {
  const [section = '', key = ''] = place.split('.')
  const holders: Readonly<Record<string, unknown>> = {
    ...state.job,
    bench: state.bench,
    [SECOND]: state.job.motion.schedule[0],
  }
  const holder = holders[section]
  const value = isRecord(holder) ? holder[key] : null
  return typeof value === 'number' ? value : null
}
