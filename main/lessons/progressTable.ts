import type { TFunction } from 'i18next'
import type { Person } from '../contract/people.ts'
import type { LessonLine, Progress } from '../contract/teaching.ts'
import { guarded, writeCsv } from '../inOut/csv.ts'

const columns = [
  'person',
  'lesson',
  'title',
  'step',
  'steps',
  'right',
  'asked',
  'tries',
  'startedAt',
  'at',
  'doneAt',
] as const

const cellsOf = (line: Progress, people: readonly Person[], lessons: readonly LessonLine[]): readonly string[] => {
  const name = people.find(({ id }) => id === line.personId)?.name ?? ''
  const lesson = lessons.find((each) => each.lesson.id === line.lessonId)?.lesson
  const answers = Object.values(line.answers)
  const asked = lesson?.steps.filter(({ ask }) => ask !== null).length ?? answers.length
  const tries = answers.reduce((sum, answer) => sum + answer.tries, 0)
  const right = answers.filter((answer) => answer.right).length
  const words = [guarded(name), guarded(line.lessonId), guarded(lesson?.title ?? '')]
  const figures = [line.step + 1, lesson?.steps.length ?? '', right, asked, tries].map(String)
  return [...words, ...figures, line.startedAt, line.at, line.doneAt ?? '']
}

/** Who has learnt what, a line a person and lesson, as a table for a spreadsheet. */
export const progressTable = (
  progress: readonly Progress[],
  people: readonly Person[],
  lessons: readonly LessonLine[],
  t: TFunction,
): string =>
  writeCsv(
    columns.map((column) => t(`worksheet:column.${column}`)),
    progress.map((line) => cellsOf(line, people, lessons)),
  )
