import { z } from 'zod'
import { lessonSchema } from '../../geometry/lesson/lesson.ts'
import { MOST_LESSON_LETTERS } from '../../geometry/lesson/parseLesson.ts'
import { day, name, record, text, utc } from './record.ts'

/** Lessons, and what is known of those who learn. */

/** A lesson of the workshop's own: its document as JSON text, and what is found in it. */
export const ownLessonSchema = z.strictObject({
  ...record,
  lessonId: z.string(),
  title: z.string(),
  document: z.string(),
})

/** A lesson file as text; what it says is judged by the lesson's own door. */
export const lessonTextSchema = z.strictObject({ text: text.max(MOST_LESSON_LETTERS + 1) })

/** A lesson to be learnt; `own` is the workshop's record of it, null for one of the program's. */
export const lessonLineSchema = z.strictObject({
  lesson: lessonSchema,
  own: z.strictObject({ id: record.id, code: record.code, version: record.version }).nullable(),
})

const lessonId = z.string().min(1).max(40)

/** Who learns; null: nobody said who. */
const learner = z.uuid().nullable()

/** Most answers to one question that are counted. */
const MOST_TRIES = 1000

/** How a question of a lesson was answered in the end. */
const answeredSchema = z.strictObject({
  right: z.boolean(),
  tries: z.int().min(1).max(MOST_TRIES),
  /** How far off the last answer was, in its figure's unit; null where nothing is measured. */
  off: z.number().nullable(),
})

/** Answers by the step (from 0) that asked. */
const answersSchema = z.record(z.string().regex(/^\d{1,2}$/), answeredSchema)

/** How far somebody is in a lesson. */
export const progressSchema = z.strictObject({
  personId: learner,
  lessonId,
  /** The step that is open, from 0. */
  step: z.int().min(0).max(100),
  answers: answersSchema,
  startedAt: utc,
  at: utc,
  doneAt: utc.nullable(),
})

/** What is kept when a step is left or answered. */
export const keepProgressSchema = progressSchema
  .pick({ personId: true, lessonId: true, step: true, answers: true })
  .extend({ done: z.boolean() })

/** What is forgotten: one lesson of somebody, or all of them. */
export const forgetSchema = z.strictObject({ personId: learner, lessonId: lessonId.nullable().default(null) })

/** Somebody who was shown wheel and grinder, and may work there under supervision. */
export const authorisationSchema = z.strictObject({ personId: z.uuid(), at: utc, who: name })

/** A lesson that somebody is to do. */
export const setWorkSchema = z.strictObject({ personId: z.uuid(), lessonId, setAt: utc, dueOn: day.nullable() })

/** Everything that a teacher looks at. */
export const learningSchema = z.strictObject({
  progress: z.array(progressSchema),
  authorisations: z.array(authorisationSchema),
  setWork: z.array(setWorkSchema),
})

/** Highest number of a worksheet's set: six digits are easily written down. */
export const MOST_SEED = 999_999

/** A worksheet: other figures for another seed, the same for the same. */
export const worksheetSchema = z.strictObject({
  lessonId,
  seed: z.int().min(0).max(MOST_SEED),
  with: z.enum(['questions', 'answers']),
})

export type OwnLesson = z.output<typeof ownLessonSchema>
export type LessonLine = z.output<typeof lessonLineSchema>
export type Progress = z.output<typeof progressSchema>
export type Answered = z.output<typeof answeredSchema>
export type Learning = z.output<typeof learningSchema>
