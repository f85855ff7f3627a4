import { z } from 'zod'
import { isRef } from './refs.ts'

/**
 * A lesson as a document: what the model is set to, what the learner may move, what is asked, and against which figure of the
 * engine the answer is held. No figure stands in its words but by name (`{{reliefMm}}`), and no answer stands in it at all.
 */
export const LESSON_VERSION = 1

/** Longest texts (characters): a step is read standing, a choice at a glance. */
const MOST = { title: 80, about: 240, paragraph: 420, line: 200, name: 24 }
/** Most steps, paragraphs of a step, choices and hints. */
const MANY = {
  steps: 40,
  paragraphs: 4,
  choices: 5,
  hints: 4,
  cases: 8,
  moves: 6,
  changes: 24,
  conditions: 4,
  varied: 6,
}

const words = (most: number) =>
  z
    .string()
    .trim()
    .min(1)
    .max(most)
    .refine((typed) => typed.isWellFormed(), { params: { code: 'notText' } })

const nameSchema = z
  .string()
  .max(MOST.name)
  .regex(/^[a-z][A-Za-z0-9]*$/)

/** A figure of the state as it is, or of a case: `reliefMm`, `twoTurns.reliefMm`, `job.motion.sweeps`, `bench.leverDeg`. */
const refSchema = z.string().refine(isRef, { params: { code: 'lessonRefUnknown' } })

/** Entries of the state set to other values, by their dotted places: `motion.stopTurnsLeft`, `bench.leverDeg`. */
const changeSchema = z
  .record(z.string().max(60), z.union([z.number(), z.string().max(40), z.null()]))
  .refine((change) => Object.keys(change).length <= MANY.changes, { params: { code: 'lessonTooManyChanges' } })

/** True where the figure is more or less than another one, or the same, each by more than `by` or within it. */
const conditionSchema = z.strictObject({
  figure: refSchema,
  is: z.enum(['more', 'less', 'same']),
  than: z.union([z.number(), refSchema]),
  /** In the figure's unit. */
  by: z.number().min(0).default(0),
})

const told = {
  question: words(MOST.line),
  /** From a nudge to all but the answer. */
  hints: z.array(words(MOST.line)).max(MANY.hints).default([]),
  /** Said after a right and after a wrong answer. */
  right: words(MOST.paragraph),
  wrong: words(MOST.paragraph),
}

/** A figure said before it is seen; right within `within` of the engine's, or within `share` of it, whichever is wider. */
const predictSchema = z.strictObject({
  kind: z.literal('predict'),
  ...told,
  figure: refSchema,
  within: z.number().positive(),
  share: z.number().min(0).max(1).default(0),
})

/** Something is moved until a figure is where it should be. */
const reachSchema = z.strictObject({
  kind: z.literal('reach'),
  ...told,
  figure: refSchema,
  target: z.union([z.number(), refSchema]),
  within: z.number().positive(),
})

/** One of several is right: the one whose conditions hold. */
const chooseSchema = z.strictObject({
  kind: z.literal('choose'),
  ...told,
  choices: z
    .array(z.strictObject({ text: words(MOST.line), when: z.array(conditionSchema).min(1).max(MANY.conditions) }))
    .min(2)
    .max(MANY.choices),
})

/** The edge drawn as it is expected, at five places across; right where all are within `within` (mm). */
const drawSchema = z.strictObject({ kind: z.literal('draw'), ...told, within: z.number().positive() })

export const askSchema = z.discriminatedUnion('kind', [predictSchema, reachSchema, chooseSchema, drawSchema])

/** What of the model a step looks at. */
export const lessonViews = ['model', 'pressure', 'glass', 'bevel', 'section', 'back', 'wood'] as const
/** Cautions that can stand with a step; their words are the program's own. */
export const lessonCautions = [
  'all',
  'wheelStopped',
  'blade',
  'eyes',
  'hotSteel',
  'edge',
  'wheel',
  'supervised',
] as const

const stepSchema = z.strictObject({
  heading: words(MOST.title),
  text: z.array(words(MOST.paragraph)).min(1).max(MANY.paragraphs),
  /** From the step before on; what the learner moved in it is put back. */
  set: changeSchema.default({}),
  /** What the learner may move. */
  move: z.array(z.string().max(60)).max(MANY.moves).default([]),
  /** For whoever teaches; never shown to the class. */
  notes: z.string().trim().max(MOST.paragraph).default(''),
  views: z.array(z.enum(lessonViews)).default([]),
  cautions: z.array(z.enum(lessonCautions)).default([]),
  /**
   * Whether what comes of it is kept back until something was said: then the whole grind runs, or the drawing is shown. Else it is there from the start, a
   * grind with keys to play it where something that is ground is looked at (glass, bevel, pressure).
   */
  run: z.boolean().default(false),
  ask: askSchema.nullable().default(null),
})

/** Places that get another value on a worksheet: all of them the same one of these. */
const variedSchema = z.strictObject({
  places: z.array(z.string().max(60)).min(1).max(MANY.moves),
  values: z.array(z.number()).min(2).max(20),
})

export const lessonSchema = z.strictObject({
  version: z.literal(LESSON_VERSION),
  id: z
    .string()
    .max(40)
    .regex(/^[a-z][a-z0-9-]*$/),
  title: words(MOST.title),
  /** What the learner can do afterwards, in one sentence. */
  about: words(MOST.about),
  minutes: z.int().min(1).max(120),
  /** The job as the lesson begins; its door is the job file's own. */
  job: z.record(z.string(), z.unknown()),
  /** What the job file has no place for. */
  bench: changeSchema.default({}),
  /** Other states to compare with, each the beginning with some changes. */
  cases: z
    .record(nameSchema, changeSchema)
    .refine((cases) => Object.keys(cases).length <= MANY.cases, { params: { code: 'lessonTooManyCases' } })
    .default({}),
  varied: z.array(variedSchema).max(MANY.varied).default([]),
  steps: z.array(stepSchema).min(1).max(MANY.steps),
})

export type Lesson = z.output<typeof lessonSchema>
export type LessonStep = Lesson['steps'][number]
export type Ask = z.output<typeof askSchema>
export type Change = z.output<typeof changeSchema>
export type Condition = z.output<typeof conditionSchema>
export type LessonView = (typeof lessonViews)[number]

/** @returns whether the moving model answers in a step, or drawings of the edge alone */
export const showsModel = ({ views }: Pick<LessonStep, 'views'>): boolean =>
  views.some((view) => view !== 'wood' && view !== 'glass')
export type LessonCaution = (typeof lessonCautions)[number]
