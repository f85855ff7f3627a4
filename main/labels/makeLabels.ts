import { ok, type Result } from '../../geometry/result.ts'
import { PROGRAM } from '../cards/card.ts'
import { type MadeFile, plainName } from '../cards/makeCard.ts'
import { loadTypefaces } from '../cards/typefaces.ts'
import { writePages } from '../cards/writePdf.ts'
import type { LabelSheet } from '../contract/labelSheets.ts'
import { createTexts } from '../texts.ts'
import type { LabelFacts } from './labelFacts.ts'
import { layOutLabels } from './layOut.ts'

/** What is printed on, and how. */
export interface LabelPaper {
  readonly sheet: LabelSheet
  /** Position of the first label, 1 or more. */
  readonly first: number
  readonly outlines: boolean
}

/** Labels as PDF. The same input gives the same bytes. */
export const makeLabels = async (
  labels: readonly LabelFacts[],
  { sheet, first, outlines }: LabelPaper,
  at: Date,
): Promise<Result<MadeFile>> => {
  const typefaces = loadTypefaces()
  const t = createTexts().getFixedT(null, 'labels')
  const pages = layOutLabels(labels, sheet, first, outlines, typefaces)
  const codes = labels.map(({ code }) => code)
  const title = t('title', { codes: codes.join(', ') })
  const bytes = await writePages(pages, typefaces, { title, program: PROGRAM, at })
  const [code = '', last = ''] = [codes[0], codes.at(-1)].map((each) => plainName(each ?? ''))
  const fileName = t(codes.length === 1 ? 'fileName.one' : 'fileName.several', { code, last })
  return ok({ bytes, fileName: `${fileName}.pdf` })
}
