import type { Job } from '../../geometry/job.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { failed, ok, type Problem, problem, type Result } from '../../geometry/result.ts'
import { type JsonScan, scanJson } from './scanJson.ts'

/** Line and character of a place in a text, counted from one, as editors show them. */
const lineAndColumn = (text: string, at: number): { readonly line: number; readonly column: number } => {
  const lines = text.slice(0, at).split('\n')
  return { line: lines.length, column: (lines.at(-1) ?? '').length + 1 }
}

const brokenAt = (text: string, { breaksAt }: JsonScan): Problem => {
  if (text.trim() === '') return problem('jobEmpty')
  if (breaksAt === null) return problem('jobUnclear')
  return breaksAt >= text.length ? problem('jobEndsEarly') : problem('jobBroken', '', lineAndColumn(text, breaksAt))
}

/** What reads as JSON and yet cannot be meant: an entry given twice, a figure beyond all figures, entries by the thousand. */
const unmeant = ({ repeated, beyond, crowded }: JsonScan): readonly Problem[] => [
  ...crowded.map((path) => problem('crowded', path)),
  ...repeated.map((path) => problem('repeatedField', path)),
  ...beyond.map((path) => problem('figureBeyond', path)),
]

const readJson = (text: string): Result<unknown> => {
  const scan = scanJson(text)
  try {
    const value: unknown = JSON.parse(text)
    const problems = unmeant(scan)
    return problems.length === 0 ? ok(value) : failed(...problems)
  } catch {
    return failed(brokenAt(text, scan))
  }
}

/** A job file's text as a job, every refusal told by its place in the file or its field. */
export const readJob = (text: string): Result<Job> => {
  const value = readJson(text)
  return value.ok ? parseJob(value.value) : value
}
