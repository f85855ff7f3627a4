import { readFileSync, renameSync, statSync, writeFileSync } from 'node:fs'
import { MOST_JOB_BYTES, parseJobText } from '../geometry/parseJob.ts'
import type { Report } from '../geometry/report.ts'
import { failed, ok, type Problem, problem, type Result } from '../geometry/result.ts'
import { solveJob } from '../geometry/solveJob.ts'
import { cardOfJob, toolOfJob } from './cards/card.ts'
import { createTexts } from './contract/texts.ts'

/**
 * `npm run --silent job -- job.json [--card out.pdf]`: the report of a job file, on standard output; `-` reads standard input.
 * A job that cannot be done: exit code 2, one line a reason on standard error, nothing written.
 */
const texts = createTexts()

/** Exit code for a job or a call that cannot be done. */
const REFUSED = 2

const readText = (place: string): Result<string> => {
  try {
    const size = place === '-' ? 0 : statSync(place).size
    if (size > MOST_JOB_BYTES) return failed(problem('jobTooLarge', '', { mostMb: MOST_JOB_BYTES / 1e6 }))
    return ok(readFileSync(place === '-' ? 0 : place, 'utf8'))
  } catch {
    return failed(problem('unreadable', '', { file: place }))
  }
}

const line = ({ code, path, params }: Problem): string => {
  const sentence = texts.t(`problems:${code}`, params)
  return path === '' ? sentence : `${path}: ${sentence}`
}

const withTexts = (report: Report) => ({
  ...report,
  cautions: report.cautions.map((caution) => ({ ...caution, text: texts.t(`cautions:${caution.code}`, caution.params) })),
})

const writeCard = async (report: Report, place: string): Promise<Result<null>> => {
  const bytes = await cardOfJob(report.job, report, toolOfJob(report.job), new Date())
  try {
    writeFileSync(`${place}.part`, bytes)
    renameSync(`${place}.part`, place)
    return ok(null)
  } catch {
    return failed(problem('unwritable', '', { file: place }))
  }
}

const reportOf = async (jobPlace: string, cardPlace: string | null): Promise<Result<Report>> => {
  const text = readText(jobPlace)
  if (!text.ok) return text
  const job = parseJobText(text.value)
  if (!job.ok) return job
  const report = solveJob(job.value)
  if (!report.ok || cardPlace === null) return report
  const card = await writeCard(report.value, cardPlace)
  return card.ok ? report : card
}

const main = async (args: readonly string[]): Promise<void> => {
  const cardAt = args.indexOf('--card')
  const cardPlace = cardAt < 0 ? null : (args[cardAt + 1] ?? null)
  const [jobPlace, ...others] = args.filter((_, i) => cardAt < 0 || (i !== cardAt && i !== cardAt + 1))
  const result =
    jobPlace === undefined || others.length > 0 || (cardAt >= 0 && cardPlace === null)
      ? failed(problem('jobUsage'))
      : await reportOf(jobPlace, cardPlace)
  if (result.ok) console.log(JSON.stringify(withTexts(result.value), null, 2))
  else {
    for (const found of result.problems) console.error(line(found))
    process.exitCode = REFUSED
  }
}

await main(process.argv.slice(2))
