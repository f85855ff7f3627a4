import type { TFunction } from 'i18next'
import { z } from 'zod'
import { cautionSchema, type Report, reportSchema } from '../../geometry/report.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { groundBlade } from '../../geometry/solid.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { stlOf } from '../../geometry/stl.ts'
import { type CommandEnd, done, inJson, refusedFor } from './commandEnd.ts'
import { cardKind, mayWrite, solidKind, writeWhole } from './outFile.ts'
import { readArgs, STANDARD } from './readArgs.ts'
import { readJob } from './readJob.ts'
import { readText } from './readText.ts'

/** A job's report, with or without its card and its ground blade. */
interface ReportOptions {
  /** A path, or `-` for standard input. */
  readonly jobPlace: string
  /** Cards and solids are files and cannot go to standard output. */
  readonly cardPlace: string | null
  readonly solidPlace: string | null
}

const USAGE = 'jobUsage'

const optionsOf = (args: readonly string[]): Result<ReportOptions> => {
  const read = readArgs(args, { card: { type: 'string' }, solid: { type: 'string' } }, USAGE)
  if (!read.ok) return read
  const { card, solid } = read.value.values
  const [jobPlace, ...others] = read.value.positionals
  const isPlace = (place: string | undefined): boolean => place !== '' && place !== STANDARD
  if (!jobPlace || others.length > 0 || !isPlace(card) || !isPlace(solid)) return failed(problem(USAGE))
  return ok({ jobPlace, cardPlace: card ?? null, solidPlace: solid ?? null })
}

/** A report as it is printed: each caution with its sentence. */
export const printedReportSchema = reportSchema.extend({
  cautions: z.array(cautionSchema.extend({ text: z.string() })),
})

const printed = (t: TFunction, report: Report): z.input<typeof printedReportSchema> => ({
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

const writeSolid = (report: Report, place: string): Result<null> => {
  const blade = groundBlade(report.job)
  return blade.ok ? writeWhole(place, stlOf(blade.value)) : blade
}

const answer = async ({ jobPlace, cardPlace, solidPlace }: ReportOptions): Promise<Result<Report>> => {
  for (const may of [mayWrite(cardPlace, cardKind), mayWrite(solidPlace, solidKind)]) if (!may.ok) return may
  const report = await reportOf(jobPlace)
  if (!report.ok) return report
  const card = cardPlace === null ? ok(null) : await writeCard(report.value, cardPlace)
  if (!card.ok) return card
  const solid = solidPlace === null ? ok(null) : writeSolid(report.value, solidPlace)
  return solid.ok ? report : solid
}

/** Prints a job's report as JSON. @param args what follows the command's name, or the whole call */
export const runReport = async (t: TFunction, args: readonly string[]): Promise<CommandEnd> => {
  const options = optionsOf(args)
  const report = options.ok ? await answer(options.value) : options
  return report.ok ? done(inJson(printed(t, report.value))) : refusedFor(t, report.problems)
}
