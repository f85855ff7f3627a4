import { jobJsonSchema } from '../geometry/job.ts'
import { parseJobText } from '../geometry/parseJob.ts'
import type { Report } from '../geometry/report.ts'
import { failed, ok, type Problem, type Result } from '../geometry/result.ts'
import { solveJob } from '../geometry/solveJob.ts'
import { type JobOptions, jobOptionsOf } from './commandLine/jobOptions.ts'
import { readText } from './commandLine/readText.ts'
import { writeWhole } from './commandLine/writeWhole.ts'
import { createTexts } from './contract/texts.ts'

/**
 * `npm run --silent job -- job.json [--card out.pdf]`: the report of a job file, on standard output; `-` reads standard input.
 * A job that cannot be done: exit code 2, one line a reason on standard error, nothing written.
 */
const { t } = createTexts()

/** Exit code for a job or a call that cannot be done. */
const REFUSED = 2

const line = ({ code, path, params }: Problem): string => {
  const sentence = t(`problems:${code}`, params)
  return path === '' ? sentence : `${path}: ${sentence}`
}

const withTexts = (report: Report) => ({
  ...report,
  cautions: report.cautions.map((caution) => ({ ...caution, text: t(`cautions:${caution.code}`, caution.params) })),
})

const reportOf = async (jobPlace: string): Promise<Result<Report>> => {
  const text = await readText(jobPlace)
  if (!text.ok) return text
  const job = parseJobText(text.value)
  return job.ok ? solveJob(job.value) : job
}

/** Type and paper are loaded for a card alone: a report takes a third of the time without them. */
const writeCard = async (report: Report, place: string): Promise<Result<null>> => {
  const { cardOfJob, toolOfJob } = await import('./cards/card.ts')
  return writeWhole(place, await cardOfJob(report.job, report, toolOfJob(report.job), new Date()))
}

const inJson = (value: unknown): string => JSON.stringify(value, null, 2)

/** @returns what to print */
const answer = async (options: JobOptions): Promise<Result<string>> => {
  if (options.does === 'help') return ok(t('hosts:job.help'))
  if (options.does === 'schema') return ok(inJson(jobJsonSchema()))
  const report = await reportOf(options.jobPlace)
  if (!report.ok) return report
  const card = options.cardPlace === null ? ok(null) : await writeCard(report.value, options.cardPlace)
  return card.ok ? ok(inJson(withTexts(report.value))) : failed(...card.problems)
}

const run = async (): Promise<void> => {
  const options = jobOptionsOf(process.argv.slice(2))
  const result = options.ok ? await answer(options.value) : options
  if (result.ok) return void process.stdout.write(`${result.value}\n`)
  for (const found of result.problems) process.stderr.write(`${line(found)}\n`)
  process.exitCode = REFUSED
}

// Whoever reads the report may stop reading before its end; that is no fault.
process.stdout.on('error', () => process.exit())
await run()
