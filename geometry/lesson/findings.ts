import { behindAt, profileOf } from '../profile.ts'
import { quantityAt, type Unit } from '../quantities.ts'
import { ok, type Result } from '../result.ts'
import { drawnShares } from './drawn.ts'
import { lessonFigures } from './figureNames.ts'
import { findFigure } from './figures.ts'
import { groundFigures, nearestArcMm } from './groundFigures.ts'
import { type Change, type Lesson, type LessonStep, showsModel } from './lesson.ts'
import { refOf, refsIn } from './refs.ts'
import { type Scene, sceneOf } from './scene.ts'
import { type LessonState, quantityOfPlace, stateOf, stateOfCase, valueAt } from './state.ts'

/** A figure with what it is written in. */
export interface LessonValue {
  /** Null: the state has no such figure. */
  readonly value: number | null
  readonly unit: Unit
  readonly decimals: number
}

/** Figures by the references that stand in a lesson. */
export type LessonValues = Readonly<Record<string, LessonValue>>

/** Texts of a step in which figures can stand. */
export const textsOf = ({ heading, text, ask }: LessonStep): readonly string[] => [
  heading,
  ...text,
  ...(ask ? [ask.question, ask.right, ask.wrong, ...ask.hints] : []),
  ...(ask?.kind === 'choose' ? ask.choices.map((choice) => choice.text) : []),
]

/** @returns what an answer is held against */
export const refsOfAsk = ({ ask }: LessonStep): readonly string[] => {
  if (ask === null || ask.kind === 'draw') return []
  if (ask.kind === 'predict') return [ask.figure]
  if (ask.kind === 'reach') return [ask.figure, ...(typeof ask.target === 'string' ? [ask.target] : [])]
  return ask.choices.flatMap(({ when }) =>
    when.flatMap(({ figure, than }) => [figure, ...(typeof than === 'string' ? [than] : [])]),
  )
}

/** What the learner said: never a figure of the engine, and filled in by whoever writes the text. */
export const ANSWER = 'answer'

/** @returns all references that a step needs, each once */
export const refsOfStep = (step: LessonStep): readonly string[] => [
  ...new Set([
    ...textsOf(step)
      .flatMap(refsIn)
      .filter((ref) => ref !== ANSWER),
    ...refsOfAsk(step),
  ]),
]

/** Places of the job stand under `job.` in references, and without it in changes. */
const placeOfRef = (place: string): string => place.replace(/^job\./, '')

const valueIn = (scene: Scene, text: string): LessonValue => {
  const ref = refOf(text)
  if (ref?.figure) {
    const [unit, decimals] = lessonFigures[ref.figure]
    return { value: findFigure[ref.figure](scene), unit, decimals }
  }
  const place = placeOfRef(ref?.place ?? '')
  const path = quantityOfPlace(place)
  const { unit, decimals } = path ? quantityAt(path) : { unit: 'count' as const, decimals: 2 }
  return { value: valueAt(scene.state, place), unit, decimals }
}

const BEFORE = 'before'

/** `before` is the state that a step begins with, whatever was moved in it since; other names are the lesson's cases. */
const stateFor = (
  lesson: Lesson,
  step: number,
  moved: Change,
  seed: number,
  of: string | null,
): Result<LessonState> => {
  if (of === null) return stateOf(lesson, step, moved, seed)
  return of === BEFORE ? stateOf(lesson, step, {}, seed) : stateOfCase(lesson, of, seed)
}

/** @returns whether a reference's state exists in a lesson */
export const caseStands = (lesson: Lesson, of: string | null): boolean =>
  of === null || of === BEFORE || of in lesson.cases

/** What the engine finds for a step. */
export interface Findings {
  readonly values: LessonValues
  /** The edge that is left, at the places at which one is drawn; null where none is asked for or none comes about. */
  readonly edgeMm: readonly number[] | null
  /** The same all across, for a picture of it where no model shows it: places and depths (mm). */
  readonly groundMm: GroundEdge | null
}

/** An edge with the arc nearest to it, at the same places. */
export interface GroundEdge {
  readonly uMm: readonly number[]
  readonly behindMm: readonly number[]
  readonly arcMm: readonly number[]
}

const edgeAtPlaces = ({ edge }: Scene): readonly number[] | null => {
  const found = edge()
  if (found === null) return null
  const profile = profileOf(found.edgeUMm, found.edgeVMm)
  const widthMm = 2 * (profile.uMm.at(-1) as number)
  return drawnShares.map((share) => behindAt(profile, (share - 0.5) * widthMm))
}

/** @returns whether a step looks at the edge alone, magnified, and speaks of what the wheel leaves */
const looksAtGround = (step: LessonStep): boolean =>
  step.views.includes('glass') &&
  !showsModel(step) &&
  refsOfStep(step).some((ref) => (refOf(ref)?.figure ?? '') in groundFigures)

const groundEdge = ({ edge }: Scene): GroundEdge | null => {
  const found = edge()
  return found && { uMm: found.edgeUMm, behindMm: found.edgeVMm, arcMm: nearestArcMm(found) }
}

/**
 * Everything that a step's words and marks need, by the engine.
 * @param moved what the learner moved in it
 * @param seed as `stateOf` takes it
 */
export const findingsOf = (lesson: Lesson, step: number, moved: Change, seed = 0): Result<Findings> => {
  const here = lesson.steps[step] as LessonStep
  const scenes = new Map<string | null, Scene>()
  const values: Record<string, LessonValue> = {}
  const sceneFor = (of: string | null): Result<Scene> => {
    const known = scenes.get(of)
    if (known) return ok(known)
    const state = stateFor(lesson, step, moved, seed, of)
    if (!state.ok) return state
    const scene = sceneOf(state.value)
    scenes.set(of, scene)
    return ok(scene)
  }
  for (const ref of refsOfStep(here)) {
    const scene = sceneFor(refOf(ref)?.of ?? null)
    if (!scene.ok) return scene
    values[ref] = valueIn(scene.value, ref)
  }
  const now = sceneFor(null)
  if (!now.ok) return now
  return ok({
    values,
    edgeMm: here.ask?.kind === 'draw' ? edgeAtPlaces(now.value) : null,
    groundMm: looksAtGround(here) ? groundEdge(now.value) : null,
  })
}
