import type { LessonValues } from '../../geometry/lesson/findings.ts'
import { lessonText } from '../../main/contract/lessonWords.ts'
import { useFigures } from '../ui/useFigure.ts'

/** @returns how a lesson's texts are written with their figures */
export const useFilled = (values: LessonValues | null): ((text: string, answer?: string) => string) => {
  const { lengthUnit } = useFigures()
  return (text, answer) => lessonText(text, values, lengthUnit, answer)
}
