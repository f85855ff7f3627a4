import { rectangle } from '../cards/shapes.ts'
import { createSheet, type Sheet } from '../cards/sheet.ts'
import { codeRuns } from '../cards/squareCode.ts'
import type { Typefaces } from '../cards/typefaces.ts'
import type { Page } from '../cards/writePdf.ts'
import { markOf } from '../contract/codes.ts'
import { type LabelPlaces, placesAt } from '../contract/labelPlaces.ts'
import { type LabelSheet, paperOf, positionAt, positionCount } from '../contract/labelSheets.ts'
import type { LabelFacts } from './labelFacts.ts'
import { labelText } from './labelText.ts'

const drawLabel = (on: Sheet, { code, words }: LabelPlaces, facts: LabelFacts): void => {
  on.shape(codeRuns(markOf(facts.code), code.xMm, code.yMm, code.widthMm), true, { fill: 0 })
  labelText(on, words, facts)
}

/** How many labels lie on the page of this number, and the position of its first; only the first page was started before. */
const pageOf = (sheet: LabelSheet, first: number, index: number) => {
  const whole = positionCount(sheet)
  const from = index === 0 ? first : 1
  return { from, start: index === 0 ? 0 : whole - first + 1 + (index - 1) * whole, count: whole - from + 1 }
}

const drawPage = (
  labels: readonly LabelFacts[],
  sheet: LabelSheet,
  from: number,
  outlines: boolean,
  typefaces: Typefaces,
): Page => {
  const on = createSheet(typefaces)
  labels.forEach((facts, i) => {
    drawLabel(on, placesAt(sheet, from + i), facts)
  })
  if (outlines)
    for (let at = 1; at <= positionCount(sheet); at += 1)
      on.shape([rectangle(positionAt(sheet, at))], true, { strokeMm: 0.1 })
  return { ...paperOf(sheet), items: on.items }
}

/**
 * Labels as pages of things to draw, row after row.
 *
 * @param first position on the first sheet, 1 or more, no more than the sheet has
 * @param outlines draws where the labels lie, for a trial on plain paper
 */
export const layOutLabels = (
  labels: readonly LabelFacts[],
  sheet: LabelSheet,
  first: number,
  outlines: boolean,
  typefaces: Typefaces,
): readonly Page[] => {
  const pages: Page[] = []
  for (let index = 0; pageOf(sheet, first, index).start < labels.length; index += 1) {
    const { from, start, count } = pageOf(sheet, first, index)
    pages.push(drawPage(labels.slice(start, start + count), sheet, from, outlines, typefaces))
  }
  return pages
}
