import { jobJsonSchema } from '../../geometry/job.ts'
import type { Report } from '../../geometry/report.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { groundBlade } from '../../geometry/solid.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { stlOf } from '../../geometry/stl.ts'
import { inOutNouns } from '../contract/inOut.ts'
import { createTexts } from '../contract/texts.ts'
import { type CommandEnd, done, inJson, refused } from './commandEnd.ts'
import { asksForHelp, type JobOptions, jobOptionsOf, type ReportOptions } from './jobOptions.ts'
import { cardKind, mayWrite, solidKind, writeWhole } from './outFile.ts'
import { readJob } from './readJob.ts'
import { readText } from './readText.ts'
import { reasonLines } from './reasonLines.ts'

const { t } = createTexts()

const withTexts = (report: Report) => ({
  ...report,
  cautions: report.cautions.map((caution) => ({ ...caution, text: t(`cautions:${caution.code}`, caution.params) })),
})

const reportOf = async (jobPlace: string): Promise<Result<Report>> => {
  const text = await readText(jobPlace)
  if (!text.ok) return text
  const job = readJob(text.value)
  return job.ok ? solveJob(job.value) : job
}

/** Type and paper are loaded for a card alone: a report takes a third of the time without them. */
const writeCard = async (report: Report, place: string): Promise<Result<null>> => {
  const { cardOfJob, toolOfJob } = await import('../cards/card.ts')
  return writeWhole(place, await cardOfJob(report.job, report, toolOfJob(report.job), new Date()))
}

/** @returns what to print */
const answer = async (options: JobOptions): Promise<Result<string>> => {
  if (options.does === 'help') return ok(t('hosts:job.help', { nouns: inOutNouns.join(', ') }))
  if (options.does === 'schema') return ok(inJson(jobJsonSchema()))
  return answerJob(options)
}

const writeSolid = (report: Report, place: string): Result<null> => {
  const blade = groundBlade(report.job)
  return blade.ok ? writeWhole(place, stlOf(blade.value)) : blade
}

const answerJob = async ({ jobPlace, cardPlace, solidPlace }: ReportOptions): Promise<Result<string>> => {
  for (const may of [mayWrite(cardPlace, cardKind), mayWrite(solidPlace, solidKind)]) if (!may.ok) return may
  const report = await reportOf(jobPlace)
  if (!report.ok) return report
  const card = cardPlace === null ? ok(null) : await writeCard(report.value, cardPlace)
  if (!card.ok) return card
  const solid = solidPlace === null ? ok(null) : writeSolid(report.value, solidPlace)
  return solid.ok ? ok(inJson(withTexts(report.value))) : solid
}

/** Even a fault of the program's own is told in words. */
const answerOrExplain = (options: JobOptions): Promise<Result<string>> =>
  answer(options).catch(() => failed(problem('jobFailed')))

/** The data and what it takes to open it are loaded for the rack alone. */
const runRackCommand = async (args: readonly string[]): Promise<CommandEnd> => {
  const { runRack } = await import('./rackCommand.ts')
  return runRack(t, args)
}

/** First word of the commands about the rack, which no job file is called: one that is needs `./` before it. */
const RACK = 'rack'

/** @param args what follows `npm run job --` */
export const runCommand = async (args: readonly string[]): Promise<CommandEnd> => {
  const [first, ...others] = args
  if (first === RACK && !others.some(asksForHelp)) return runRackCommand(others)
  const options = jobOptionsOf(args)
  const result = options.ok ? await answerOrExplain(options.value) : options
  return result.ok ? done(result.value) : refused(reasonLines(t, result.problems))
}
