import { failed, ok, type Problem, problem, type Result } from '../result.ts'
import { problemsOf } from '../zodProblems.ts'
import { ANSWER, caseStands, refsOfStep, textsOf } from './findings.ts'
import { LESSON_VERSION, type Lesson, lessonSchema } from './lesson.ts'
import { refOf, refsIn } from './refs.ts'
import { quantityOfPlace, stateOf, stateOfCase } from './state.ts'

/** Longest lesson text read (characters): many times the longest lesson. */
export const MOST_LESSON_LETTERS = 500_000

const at = (path: string, problems: readonly Problem[]): readonly Problem[] =>
  problems.map((found) => ({ ...found, path: [path, found.path].filter((part) => part !== '').join('.') }))

const refsOfTexts = (lesson: Lesson, k: number): readonly Problem[] => {
  const step = lesson.steps[k] as Lesson['steps'][number]
  const inTexts = textsOf(step)
    .flatMap(refsIn)
    .filter((ref) => ref !== ANSWER)
  const unknown = inTexts.filter((ref) => refOf(ref) === null)
  const homeless = refsOfStep(step).filter((ref) => !caseStands(lesson, refOf(ref)?.of ?? null))
  return [
    ...unknown.map((ref) => problem('lessonRefUnknown', `steps.${k}`, { ref })),
    ...homeless.map((ref) => problem('lessonCaseUnknown', `steps.${k}`, { ref })),
  ]
}

const placesOf = (lesson: Lesson, k: number): readonly Problem[] =>
  (lesson.steps[k] as Lesson['steps'][number]).move
    .filter((place) => quantityOfPlace(place) === null)
    .map((place) => problem('lessonPlaceUnknown', `steps.${k}.move`, { place }))

/** What no single field can tell: every state closes, every name names something. */
const between = (lesson: Lesson): readonly Problem[] => {
  const states = lesson.steps.flatMap((_, k) => {
    const state = stateOf(lesson, k)
    return state.ok ? [] : at(`steps.${k}.set`, state.problems)
  })
  // The beginning is in every step: said once is enough.
  const first = states.filter(({ path }) => path.startsWith('steps.0.'))
  const cases = Object.keys(lesson.cases).flatMap((name) => {
    const state = stateOfCase(lesson, name)
    return state.ok ? [] : at(`cases.${name}`, state.problems)
  })
  const names = lesson.steps.flatMap((_, k) => [...refsOfTexts(lesson, k), ...placesOf(lesson, k)])
  return [...(first.length > 0 ? first : states), ...(first.length > 0 ? [] : cases), ...names]
}

/** A lesson's door. @returns the lesson with defaults filled in, or every problem with the place of each */
export const parseLesson = (input: unknown): Result<Lesson> => {
  const version = typeof input === 'object' && input !== null && 'version' in input ? input.version : undefined
  if (typeof version === 'number' && version > LESSON_VERSION)
    return failed(problem('lessonTooNew', 'version', { version }))
  const parsed = lessonSchema.safeParse(input)
  if (!parsed.success) return failed(...problemsOf(parsed.error, input))
  const problems = between(parsed.data)
  return problems.length === 0 ? ok(parsed.data) : failed(...problems)
}

/** The same from text. */
export const parseLessonText = (text: string): Result<Lesson> => {
  if (text.length > MOST_LESSON_LETTERS) return failed(problem('lessonTooLong', '', { most: MOST_LESSON_LETTERS }))
  let input: unknown
  try {
    input = JSON.parse(text)
  } catch (error) {
    return failed(problem('notJson', '', { detail: error instanceof Error ? error.message : String(error) }))
  }
  return parseLesson(input)
}
