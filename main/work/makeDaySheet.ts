import { ok, type Result } from '../../geometry/result.ts'
import { PROGRAM } from '../cards/card.ts'
import type { MadeFile } from '../cards/makeCard.ts'
import { loadTypefaces } from '../cards/typefaces.ts'
import { writePages } from '../cards/writePdf.ts'
import type { QueueLine } from '../contract/day.ts'
import type { Settings } from '../contract/entities.ts'
import { createTexts } from '../texts.ts'
import { layOutDay } from './layOutDay.ts'

/** What a day's sheet is drawn from. */
export interface DaySheet {
  /** `YYYY-MM-DD` */
  readonly onDay: string
  readonly lines: readonly QueueLine[]
  readonly lengthUnit: Settings['lengthUnit']
}

/** The day's irons in their order on paper: bar, projection and stops of each, a box to tick, cautions. The same input gives the same bytes. */
export const makeDaySheet = async (sheet: DaySheet, at: Date): Promise<Result<MadeFile>> => {
  const typefaces = loadTypefaces()
  const t = createTexts().t
  const title = t('day:paper.title', { day: sheet.onDay })
  const bytes = await writePages(layOutDay(sheet, t, typefaces), typefaces, { title, program: PROGRAM, at })
  return ok({ bytes, fileName: `${t('day:paper.fileName', { day: sheet.onDay })}.pdf` })
}
