import type { TFunction } from 'i18next'
import type { Lesson } from '../../geometry/lesson/lesson.ts'
import { failed, type Problem, type Result } from '../../geometry/result.ts'
import { checkLessonText } from '../lessons/checkLesson.ts'

/** The place of a fault with its line, as an editor counts them. */
const withLine =
  (t: TFunction) =>
  (found: Problem): Problem => ({
    ...found,
    path: t('command:atLine', { path: found.path, line: found.params.line }).trim(),
  })

/** A lesson file's text as a lesson; every refusal names its line. */
export const readLesson = (t: TFunction, text: string): Result<Lesson> => {
  const checked = checkLessonText(text)
  return checked.ok ? checked : failed(...checked.problems.map(withLine(t)))
}
