import { create } from 'zustand'
import { type Ask, type Lesson, type LessonStep, lessonSchema } from '../../../geometry/lesson/lesson.ts'
import type { LessonLine } from '../../../main/contract/teaching.ts'

/** A lesson being written. Its shape is a lesson's; whether it is one, its door says. */
export interface Draft {
  readonly lesson: Lesson
  /** The record that it changes; null: a new lesson. */
  readonly own: LessonLine['own']
  /** The step that is open, from 0. */
  readonly step: number
}

/** What was being written when a window was closed or lost is there again in the next one. */
const KEPT = 'lesson-draft'

const readKept = (): Draft | null => {
  try {
    const kept = JSON.parse(localStorage.getItem(KEPT) ?? 'null') as Draft | null
    return kept && lessonSchema.safeParse(kept.lesson).success ? kept : null
  } catch {
    return null
  }
}

export const useDraft = create<{ readonly draft: Draft | null }>()(() => ({ draft: readKept() }))

useDraft.subscribe(({ draft }) => {
  try {
    if (draft) localStorage.setItem(KEPT, JSON.stringify(draft))
    else localStorage.removeItem(KEPT)
  } catch {
    // A window that may keep nothing still writes; it only forgets when it is closed.
  }
})

const free = (id: string, taken: readonly string[]): string => {
  let count = 2
  while (taken.includes(`${id}-${count}`)) count++
  return `${id}-${count}`
}

/** Opens one of the workshop's own lessons, or a copy of one of the program's under a name of its own. */
export const beginFrom = ({ lesson, own }: LessonLine, lines: readonly LessonLine[]): void => {
  const id = own
    ? lesson.id
    : free(
        lesson.id,
        lines.map((line) => line.lesson.id),
      )
  useDraft.setState({ draft: { lesson: { ...lesson, id }, own, step: 0 } })
}

export const putAway = (): void => useDraft.setState({ draft: null })

const change = (patch: (draft: Draft) => Partial<Draft>): void =>
  useDraft.setState(({ draft }) => ({ draft: draft && { ...draft, ...patch(draft) } }))

export const openStep = (step: number): void => change(() => ({ step }))

/** Changes what stands above the steps. */
export const changeLesson = (patch: Partial<Lesson>): void =>
  change(({ lesson }) => ({ lesson: { ...lesson, ...patch } }))

/** Changes the step that is open. */
export const changeStep = (patch: Partial<LessonStep>): void =>
  change(({ lesson, step }) => ({
    lesson: { ...lesson, steps: lesson.steps.map((each, k) => (k === step ? { ...each, ...patch } : each)) },
  }))

/** Puts a copy of the open step after it, with nothing asked, and opens that. */
export const addStep = (heading: string): void =>
  change(({ lesson, step }) => {
    const { set: _, ...like } = lesson.steps[step] as LessonStep
    const fresh: LessonStep = { ...like, heading, set: {}, notes: '', ask: null, run: false }
    return { lesson: { ...lesson, steps: lesson.steps.toSpliced(step + 1, 0, fresh) }, step: step + 1 }
  })

/** Takes the open step out; the last one stays. */
export const removeStep = (): void =>
  change(({ lesson, step }) =>
    lesson.steps.length === 1
      ? {}
      : { lesson: { ...lesson, steps: lesson.steps.toSpliced(step, 1) }, step: Math.max(0, step - 1) },
  )

/** Moves the open step on or back. */
export const moveStep = (by: 1 | -1): void =>
  change(({ lesson, step }) => {
    const to = step + by
    if (to < 0 || to >= lesson.steps.length) return {}
    const moved = lesson.steps[step] as LessonStep
    return { lesson: { ...lesson, steps: lesson.steps.toSpliced(step, 1).toSpliced(to, 0, moved) }, step: to }
  })

/** What a question keeps when it is asked in another way. */
export const asKind = (ask: Ask | null, kind: Ask['kind']): Ask => {
  const told = {
    question: ask?.question ?? '',
    hints: ask?.hints ?? [],
    right: ask?.right ?? '',
    wrong: ask?.wrong ?? '',
  }
  const figure = ask && 'figure' in ask ? ask.figure : 'reliefMm'
  switch (kind) {
    case 'predict':
      return { kind, ...told, figure, within: 0.02, share: 0 }
    case 'reach':
      return { kind, ...told, figure, target: 0, within: 0.02 }
    case 'draw':
      return { kind, ...told, within: 0.1 }
    case 'choose':
      return {
        kind,
        ...told,
        choices: [
          { text: '', when: [{ figure, is: 'more', than: 0, by: 0 }] },
          { text: '', when: [{ figure, is: 'same', than: 0, by: 0 }] },
        ],
      }
  }
}
