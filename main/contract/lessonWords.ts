import { ANSWER, type LessonValue, type LessonValues } from '../../geometry/lesson/findings.ts'
import type { Settings } from './entities.ts'
import { figure, joined } from './figures.ts'

/** A figure that is nowhere: the text stays readable. */
const NOTHING = '…'

/** No figure is written as minus nothing. */
const shown = (value: number, decimals: number): number => (Math.abs(value) < 0.5 * 10 ** -decimals ? 0 : value)

/** @returns a figure of a lesson as it is written */
export const lessonFigure = ({ value, unit, decimals }: LessonValue, lengthUnit: Settings['lengthUnit']): string =>
  value === null ? NOTHING : joined(figure(shown(value, decimals), unit, decimals, lengthUnit))

/** @returns a lesson's text with its figures written in */
export const lessonText = (
  text: string,
  values: LessonValues | null,
  lengthUnit: Settings['lengthUnit'],
  answer = '',
): string =>
  text.replace(/\{\{\s*([^{}]+?)\s*\}\}/g, (_, ref: string) => {
    const found = values?.[ref]
    return ref === ANSWER ? answer : found ? lessonFigure(found, lengthUnit) : NOTHING
  })
