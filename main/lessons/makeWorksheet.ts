import type { Lesson } from '../../geometry/lesson/lesson.ts'
import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import { PROGRAM } from '../cards/card.ts'
import type { MadeFile } from '../cards/makeCard.ts'
import { loadTypefaces } from '../cards/typefaces.ts'
import { writePages } from '../cards/writePdf.ts'
import type { Settings } from '../contract/entities.ts'
import { createTexts } from '../texts.ts'
import { layOutWorksheet } from './layOutWorksheet.ts'
import { paperQuestions } from './worksheet.ts'

/** What a worksheet is made from. */
export interface Worksheet {
  readonly lesson: Lesson
  readonly seed: number
  readonly answers: boolean
  readonly lengthUnit: Settings['lengthUnit']
}

/** A lesson's questions on paper, or their answers: both from the same figures for the same seed. The same input gives the same bytes. */
export const makeWorksheet = async (
  { lesson, seed, answers, lengthUnit }: Worksheet,
  at: Date,
): Promise<Result<MadeFile>> => {
  const questions = paperQuestions(lesson, seed, lengthUnit)
  if (!questions.ok) return questions
  if (questions.value.length === 0) return failed(problem('worksheetEmpty', 'lessonId', { title: lesson.title }))
  const typefaces = loadTypefaces()
  const t = createTexts().t
  const head = { title: lesson.title, about: lesson.about, seed, answers }
  const pages = layOutWorksheet(head, questions.value, t, typefaces)
  const bytes = await writePages(pages, typefaces, { title: lesson.title, program: PROGRAM, at })
  const name = t(answers ? 'worksheet:answers' : 'worksheet:questions').toLowerCase()
  return ok({ bytes, fileName: `${lesson.id}-${name}-${seed}.pdf` })
}
