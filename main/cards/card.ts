import type { Job } from '../../geometry/job.ts'
import { quantities } from '../../geometry/quantities.ts'
import type { Report } from '../../geometry/report.ts'
import type { Settings } from '../contract/entities.ts'
import { figure } from '../contract/figures.ts'
import { writeSvg } from '../template/svg.ts'
import { createTexts } from '../texts.ts'
import { type CardTool, factsOf, inWords } from './facts.ts'
import { layOutCard } from './layOut.ts'
import { PAGE } from './sheet.ts'
import { loadTypefaces } from './typefaces.ts'
import { writePages, writePdf } from './writePdf.ts'

export type { CardTool } from './facts.ts'

/** Written into the file as what made it. */
export const PROGRAM = 'Camberwright'

/** What a card can say of a tool when only the job is known. */
export const toolOfJob = (job: Job): CardTool => {
  const width = inWords(figure(job.blade.widthMm, 'mm', quantities.blade.widthMm.decimals))
  return { code: '', name: createTexts().t('card:genericName', { width }), dotCorner: 'left', who: '' }
}

/**
 * The job card as PDF, one A4 page on its side. Figures are the report's. The same input gives the same bytes.
 *
 * @param at when the card is made; printed as a day of the machine's own calendar
 * @param lengthUnit what lengths are printed in
 */
export const cardOfJob = async (
  job: Job,
  report: Report,
  tool: CardTool,
  at: Date,
  lengthUnit: Settings['lengthUnit'] = 'mm',
): Promise<Uint8Array> => {
  const facts = factsOf(job, report, tool, at, lengthUnit)
  const typefaces = loadTypefaces()
  const title = facts.t('title', { code: tool.code }).trim()
  return writePdf(layOutCard(facts, typefaces), typefaces, { title, program: PROGRAM, at })
}

/** As `cardOfJob`, as a drawing that a page can show and print. */
export const cardDrawing = (
  job: Job,
  report: Report,
  tool: CardTool,
  at: Date,
  lengthUnit: Settings['lengthUnit'],
): Uint8Array => {
  const facts = factsOf(job, report, tool, at, lengthUnit)
  const items = layOutCard(facts, loadTypefaces())
  return new TextEncoder().encode(writeSvg([{ name: 'card', items }], facts.t('title', { code: tool.code }).trim()))
}

/** As `cardOfJob`, one card a page. @param title of the whole file */
export const cardsOfJobs = async (
  cards: readonly { readonly job: Job; readonly report: Report; readonly tool: CardTool }[],
  title: string,
  at: Date,
  lengthUnit: Settings['lengthUnit'],
): Promise<Uint8Array> => {
  const typefaces = loadTypefaces()
  const pages = cards.map(({ job, report, tool }) => ({
    ...PAGE,
    items: layOutCard(factsOf(job, report, tool, at, lengthUnit), typefaces),
  }))
  return writePages(pages, typefaces, { title, program: PROGRAM, at })
}
