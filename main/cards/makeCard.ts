import { parseJob } from '../../geometry/parseJob.ts'
import { ok, type Result } from '../../geometry/result.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import type { Fixture, JobRecord, Settings, Station, Tool } from '../contract/entities.ts'
import { createTexts } from '../contract/texts.ts'
import { type CardTool, cardOfJob } from './card.ts'

/** What the rack holds of a job in hand: all that a page is drawn from. */
export interface CardInput {
  readonly tool: Tool
  readonly station: Station
  readonly fixture: Fixture
  readonly job: JobRecord
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

/**
 * Solves a job of the rack and makes its card.
 *
 * @returns the card, or the problems that the job has
 */
export const makeCard = async (
  input: CardInput,
  at: Date,
  lengthUnit: Settings['lengthUnit'] = 'mm',
): Promise<Result<MadeFile>> => {
  const job = parseJob(input.job.document)
  if (!job.ok) return job
  const report = solveJob(job.value)
  if (!report.ok) return report
  const bytes = await cardOfJob(job.value, report.value, cardTool(input), at, lengthUnit)
  const fileName = `${createTexts().t('card:fileName', { code: plainName(input.tool.code) })}.pdf`
  return ok({ bytes, fileName })
}
