import type { Job } from '../../geometry/job.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import type { Report } from '../../geometry/report.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import type { Fixture, JobRecord, Settings, Station, Tool } from '../contract/entities.ts'
import { createTexts } from '../texts.ts'
import { type CardTool, cardDrawing, cardOfJob, cardsOfJobs } from './card.ts'

/** What the rack holds of a job in hand: all that a page is drawn from. */
export interface CardInput {
  readonly tool: Tool
  readonly station: Station
  readonly fixture: Fixture
  /** Without a code where it was never kept. */
  readonly job: Pick<JobRecord, 'code' | 'document'>
  /** Who has the tool; empty: nobody. */
  readonly holder: string
}

/** A file that a host may hand on. */
export interface MadeFile {
  readonly bytes: Uint8Array
  readonly fileName: string
}

/** Letters and figures only, so that the name is a file's on every system. */
export const plainName = (code: string): string => code.replace(/[^A-Za-z0-9-]+/g, '-')

const cardTool = ({ tool, station, job, holder }: CardInput): CardTool => ({
  code: tool.code,
  name: tool.name,
  dotCorner: tool.dotCorner,
  who: holder,
  jobCode: job.code,
  rotation: station.rotation,
  measuredAt: station.measuredAt,
})

const solved = (input: CardInput): Result<{ readonly job: Job; readonly report: Report }> => {
  const job = parseJob(input.job.document)
  if (!job.ok) return job
  const report = solveJob(job.value)
  return report.ok ? ok({ job: job.value, report: report.value }) : report
}

/**
 * Solves a job of the rack and makes its card.
 *
 * @returns the card, or the problems that the job has
 */
export const makeCard = async (
  input: CardInput,
  at: Date,
  lengthUnit: Settings['lengthUnit'] = 'mm',
  form: 'pdf' | 'svg' = 'pdf',
): Promise<Result<MadeFile>> => {
  const found = solved(input)
  if (!found.ok) return found
  const { job, report } = found.value
  const make = form === 'pdf' ? cardOfJob : cardDrawing
  const bytes = await make(job, report, cardTool(input), at, lengthUnit)
  const fileName = `${createTexts().t('card:fileName', { code: plainName(input.tool.code) })}.${form}`
  return ok({ bytes, fileName })
}

/** Cards of a day's work, one a page. */
export interface MadeCards extends MadeFile {
  /** Codes of the tools whose job cannot be ground as it stands, and who have no card. */
  readonly without: readonly string[]
}

/**
 * As `makeCard`, for the irons of a day in their order, in one file.
 *
 * @param onDay `YYYY-MM-DD`, for the file's name
 * @returns the first problem where no job of all can be ground
 */
export const makeCards = async (
  inputs: readonly CardInput[],
  onDay: string,
  at: Date,
  lengthUnit: Settings['lengthUnit'] = 'mm',
): Promise<Result<MadeCards>> => {
  const each = inputs.map((input) => ({ input, found: solved(input) }))
  const cards = each.flatMap(({ input, found }) => (found.ok ? [{ ...found.value, tool: cardTool(input) }] : []))
  const refused = each.flatMap(({ found }) => (found.ok ? [] : [found]))
  if (cards.length === 0) return refused[0] ?? failed(problem('dayEmpty'))
  const t = createTexts().getFixedT(null, 'card')
  const bytes = await cardsOfJobs(cards, t('dayCards', { day: onDay }), at, lengthUnit)
  const without = each.flatMap(({ input, found }) => (found.ok ? [] : [input.tool.code]))
  return ok({ bytes, fileName: `${t('dayCardsFile', { day: onDay })}.pdf`, without })
}
