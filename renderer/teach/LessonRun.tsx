import { useEffect, useMemo, useRef } from 'react'
import type { Findings } from '../../geometry/lesson/findings.ts'
import type { Lesson, LessonStep } from '../../geometry/lesson/lesson.ts'
import type { Mark } from '../../geometry/lesson/mark.ts'
import { type LessonState, stateOf } from '../../geometry/lesson/state.ts'
import type { Learning, LessonLine } from '../../main/contract/teaching.ts'
import { Problems } from '../ui/Problems.tsx'
import { useTexts } from '../ui/texts.tsx'
import { Asked } from './asks/Asked.tsx'
import { ClassKeys } from './class/ClassKeys.tsx'
import { useShowing } from './class/showing.ts'
import { useShowWords } from './class/useShowWords.ts'
import './class/class.css'
import { LessonCautions } from './LessonCautions.tsx'
import { LessonEnd } from './LessonEnd.tsx'
import { LessonShown } from './LessonShown.tsx'
import { Moves } from './Moves.tsx'
import { closeLesson, finish, goToStep, type Teaching, useTeaching } from './teaching.ts'
import { useFilled } from './useFilled.ts'
import { useFindings } from './useFindings.ts'

interface LessonRunProps {
  readonly lesson: Lesson
  readonly lines: readonly LessonLine[]
  readonly learning: Learning
}

/** What every part of an open step is given. */
export interface StepProps {
  readonly lesson: Lesson
  readonly step: LessonStep
  readonly state: LessonState
  /** Null while the engine is at work. */
  readonly findings: Findings | null
  readonly teaching: Teaching
}

/** A lesson, step by step: words and question at the left, the model that answers at the right. */
export const LessonRun = (props: LessonRunProps) => {
  const { lesson } = props
  const teaching = useTeaching()
  if (teaching.done) return <LessonEnd {...props} />
  const k = Math.min(teaching.step, lesson.steps.length - 1)
  return <OpenStep key={k} lesson={lesson} k={k} teaching={teaching} />
}

interface OpenStepProps {
  readonly lesson: Lesson
  readonly k: number
  readonly teaching: Teaching
}

const OpenStep = ({ lesson, k, teaching }: OpenStepProps) => {
  const t = useTexts()
  const step = lesson.steps[k] as LessonStep
  const state = useMemo(
    () => stateOf(lesson, k, teaching.moved, teaching.seed),
    [lesson, k, teaching.moved, teaching.seed],
  )
  const found = useFindings(lesson, k, teaching.moved, teaching.seed)
  const lastGood = useRef<LessonState | null>(null)
  if (state.ok) lastGood.current = state.value
  const shown = lastGood.current
  const problems = state.ok ? (found && !found.ok ? found.problems : []) : state.problems
  const heading = useRef<HTMLHeadingElement>(null)
  useEffect(() => heading.current?.focus(), [])
  const findings = found?.ok ? found.value : null
  // While something is moved the figures before it stand until the new ones are there.
  const lastFound = useRef(findings)
  if (findings) lastFound.current = findings
  const text = useFilled(lastFound.current?.values ?? null)
  useShowWords(step, teaching, text)
  const parts: StepProps | null = shown && { lesson, step, state: shown, findings, teaching }
  return (
    <div className="teach-run" data-wide={step.views.length === 0}>
      <section className="teach-words" aria-labelledby="teach-heading">
        <p className="muted">
          {lesson.title} · {t('teach:step', { step: k + 1, steps: lesson.steps.length })}
        </p>
        <h2 id="teach-heading" ref={heading} tabIndex={-1}>
          {text(step.heading)}
        </h2>
        {step.text.map((paragraph) => (
          <p key={paragraph}>{text(paragraph)}</p>
        ))}
        <LessonCautions names={step.cautions} />
        {problems.length > 0 && <Problems problems={problems} />}
        {parts && step.ask === null && step.move.length > 0 && <Moves {...parts} />}
        {parts && step.ask && <Asked key={`${lesson.id} ${k}`} {...parts} ask={step.ask} />}
        <Notes notes={text(step.notes)} />
        <Ways k={k} last={lesson.steps.length - 1} mark={teaching.mark} />
      </section>
      {parts && step.views.length > 0 && <LessonShown {...parts} />}
    </div>
  )
}

/** What only the teacher reads. */
const Notes = ({ notes }: { readonly notes: string }) => {
  const t = useTexts()
  const here = useShowing((showing) => showing.here)
  if (!here || notes === '') return null
  return (
    <section className="teach-notes" aria-label={t('teach:notes')}>
      <h3>{t('teach:notes')}</h3>
      <p>{notes}</p>
    </section>
  )
}

const Ways = ({ k, last, mark }: { readonly k: number; readonly last: number; readonly mark: Mark | null }) => {
  const t = useTexts()
  return (
    <div className="teach-ways">
      <button type="button" className="key" onClick={() => (k === 0 ? closeLesson() : goToStep(k - 1))}>
        {t(k === 0 ? 'teach:toLessons' : 'teach:back')}
      </button>
      <button
        type="button"
        className={mark?.right ? 'key key-main' : 'key'}
        onClick={() => (k === last ? finish() : goToStep(k + 1))}
      >
        {t(k === last ? 'teach:finish' : 'teach:next')}
      </button>
      {k > 0 && (
        <button type="button" className="word" onClick={closeLesson}>
          {t('teach:leave')}
        </button>
      )}
      <ClassKeys />
    </div>
  )
}
