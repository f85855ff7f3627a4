import { create } from 'zustand'
import type { Change, Lesson, LessonStep } from '../../geometry/lesson/lesson.ts'
import type { Answer, Mark } from '../../geometry/lesson/mark.ts'
import type { Answered, Progress } from '../../main/contract/teaching.ts'
import { sayProblem } from '../app/store.ts'
import { call } from '../app/transport.ts'
import { seedAgain } from './otherFigures.ts'

/** Who learns, which lesson is open, and how far it is. */
export interface Teaching {
  /** Null: nobody said who. */
  readonly learnerId: string | null
  /** Whether somebody was chosen in this window; before, whoever learnt last is taken. */
  readonly learnerChosen: boolean
  readonly lesson: Lesson | null
  /** The lesson that was left last in this window. */
  readonly leftId: string | null
  readonly step: number
  readonly moved: Change
  /** Other figures of the lesson's varied places, from the first guess that was wrong on; 0: its own. */
  readonly seed: number
  /** Nothing is said yet; the wheel runs to show it; it is answered. */
  readonly stage: 'asking' | 'running' | 'told'
  readonly answer: Answer | null
  readonly mark: Mark | null
  readonly hints: number
  readonly answers: Progress['answers']
  readonly done: boolean
}

/** Whether what a step shows would give the answer away, and waits until something is said. What is moved until it fits is watched all the time. */
export const keepsBack = ({ run, ask }: LessonStep, stage: Teaching['stage']): boolean =>
  run && ask !== null && ask.kind !== 'reach' && stage === 'asking'

const fresh = { moved: {}, seed: 0, stage: 'asking', answer: null, mark: null, hints: 0 } as const

export const useTeaching = create<Teaching>()(() => ({
  learnerId: null,
  learnerChosen: false,
  lesson: null,
  leftId: null,
  step: 0,
  answers: {},
  done: false,
  ...fresh,
}))

/** Chooses who learns; what is open is put away, as it was somebody else's. */
export const chooseLearner = (learnerId: string | null): void =>
  useTeaching.setState({ learnerId, learnerChosen: true, lesson: null })

/** Opens a lesson where it was left. */
export const openLesson = (lesson: Lesson, progress: Progress | null): void => {
  const last = lesson.steps.length - 1
  useTeaching.setState({
    lesson,
    step: Math.min(progress?.step ?? 0, last),
    answers: progress?.answers ?? {},
    done: false,
    ...fresh,
  })
}

export const closeLesson = (): void =>
  useTeaching.setState(({ lesson }) => ({ lesson: null, leftId: lesson?.id ?? null }))

/** Notes how far it is; a learner who is gone is told, and the lesson goes on. */
const keepProgress = async (done: boolean): Promise<void> => {
  const { lesson, learnerId, step, answers } = useTeaching.getState()
  if (!lesson) return
  const kept = await call('progress.keep', { personId: learnerId, lessonId: lesson.id, step, answers, done })
  if (!kept.ok && kept.problems[0]) sayProblem(kept.problems[0])
}

/** Goes to a step; what was moved in the one before is put back. */
export const goToStep = (step: number): void => {
  useTeaching.setState({ step, done: false, ...fresh })
  void keepProgress(false)
}

/** Ends the lesson: all its steps were seen. */
export const finish = (): void => {
  useTeaching.setState({ done: true })
  void keepProgress(true)
}

/** Moves something of the model; an answer given before is open again. */
export const move = (place: string, value: number): void =>
  useTeaching.setState(({ moved }) => ({
    moved: { ...moved, [place]: value },
    stage: 'asking',
    answer: null,
    mark: null,
  }))

/** Puts back what was moved in this step. */
export const putBack = (): void => useTeaching.setState({ ...fresh })

export const showHint = (): void => useTeaching.setState(({ hints }) => ({ hints: hints + 1 }))

/** Says an answer: the wheel runs first where the step has it so. */
export const say = (answer: Answer, mark: Mark, runs: boolean): void => {
  const { step, answers } = useTeaching.getState()
  const before = answers[step]
  const answered: Answered = { right: mark.right, tries: (before?.tries ?? 0) + 1, off: mark.off }
  useTeaching.setState({ answer, mark, stage: runs ? 'running' : 'told', answers: { ...answers, [step]: answered } })
  void keepProgress(false)
}

/** The wheel has shown it. */
export const tell = (): void => useTeaching.setState(({ stage }) => ({ stage: stage === 'running' ? 'told' : stage }))

/** Opens the question again. */
export const askAgain = (): void =>
  useTeaching.setState(({ lesson, answer, seed }) => ({
    stage: 'asking',
    answer: null,
    mark: null,
    seed: lesson ? seedAgain(lesson, answer, seed) : seed,
  }))
