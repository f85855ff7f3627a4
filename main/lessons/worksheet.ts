import { findingsOf } from '../../geometry/lesson/findings.ts'
import type { Ask, Lesson } from '../../geometry/lesson/lesson.ts'
import { rightChoices } from '../../geometry/lesson/mark.ts'
import { ok, type Result } from '../../geometry/result.ts'
import type { Settings } from '../contract/entities.ts'
import { lessonFigure, lessonText } from '../contract/lessonWords.ts'

/** What can be asked on paper: whatever is answered without moving the model. */
export type PaperAsk = Exclude<Ask, { kind: 'reach' }>

/** One question on paper, its figures written in, with the engine's answer. */
export interface PaperQuestion {
  readonly kind: PaperAsk['kind']
  readonly heading: string
  readonly text: readonly string[]
  readonly question: string
  readonly choices: readonly string[]
  /** Number of the right choice; null where none is chosen. */
  readonly choice: number | null
  /** The figure asked for, as it is written. */
  readonly figure: string
  /** The edge asked for, at the drawn places (mm behind the foremost). */
  readonly edgeMm: readonly number[]
  readonly why: string
}

const questionOf = (
  lesson: Lesson,
  k: number,
  ask: PaperAsk,
  seed: number,
  lengthUnit: Settings['lengthUnit'],
): Result<PaperQuestion> => {
  const step = lesson.steps[k] as Lesson['steps'][number]
  const found = findingsOf(lesson, k, {}, seed)
  if (!found.ok) return found
  const { values, edgeMm } = found.value
  const write = (text: string) => lessonText(text, values, lengthUnit)
  const figure = ask.kind === 'predict' ? values[ask.figure] : undefined
  const foremost = Math.min(...(edgeMm ?? [0]))
  return ok({
    kind: ask.kind,
    heading: write(step.heading),
    text: step.text.map(write),
    question: write(ask.question),
    choices: ask.kind === 'choose' ? ask.choices.map(({ text }) => write(text)) : [],
    choice: ask.kind === 'choose' ? (rightChoices(ask, values)[0] ?? null) : null,
    figure: figure ? lessonFigure(figure, lengthUnit) : '',
    edgeMm: (edgeMm ?? []).map((v) => v - foremost),
    why: write(ask.right),
  })
}

/** @returns a lesson's questions for paper, with the figures that belong to a seed */
export const paperQuestions = (
  lesson: Lesson,
  seed: number,
  lengthUnit: Settings['lengthUnit'],
): Result<readonly PaperQuestion[]> => {
  const questions: PaperQuestion[] = []
  for (const [k, { ask }] of lesson.steps.entries()) {
    if (ask === null || ask.kind === 'reach') continue
    const question = questionOf(lesson, k, ask, seed, lengthUnit)
    if (!question.ok) return question
    questions.push(question.value)
  }
  return ok(questions)
}
