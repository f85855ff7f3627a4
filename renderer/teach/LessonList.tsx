import { useRef } from 'react'
import type { Learning, LessonLine, Progress } from '../../main/contract/teaching.ts'
import { useApp } from '../app/store.ts'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFocusKept } from '../ui/useFocusKept.ts'
import { LessonFile } from './LessonFile.tsx'
import { chooseLearner, openLesson, useTeaching } from './teaching.ts'
import { progressOf } from './useLessons.ts'

interface LessonListProps {
  readonly lines: readonly LessonLine[]
  readonly learning: Learning
  readonly learnerId: string | null
}

/** Who learns, and every lesson with how far that is. */
export const LessonList = ({ lines, learning, learnerId }: LessonListProps) => {
  const t = useTexts()
  return (
    <div className="teach-list">
      <div className="teach-head">
        <LearnerChoice learnerId={learnerId} />
        <LessonFile />
      </div>
      <Supervised learning={learning} learnerId={learnerId} />
      <ol>
        {lines.map((line) => (
          <LessonRow
            key={line.lesson.id}
            line={line}
            progress={progressOf(learning, learnerId, line.lesson.id)}
            due={
              learning.setWork.find((work) => work.personId === learnerId && work.lessonId === line.lesson.id)?.dueOn
            }
            learnerId={learnerId}
          />
        ))}
      </ol>
      <p className="muted">{t('teach:rules')}</p>
    </div>
  )
}

const NOBODY = ''

const LearnerChoice = ({ learnerId }: { readonly learnerId: string | null }) => {
  const t = useTexts()
  const people = useApp((app) => app.people)
  return (
    <label className="entry teach-learner">
      <span className="entry-name">{t('teach:learner.label')}</span>
      <select value={learnerId ?? NOBODY} onChange={(event) => chooseLearner(event.target.value || null)}>
        <option value={NOBODY}>{t('teach:learner.nobody')}</option>
        {people.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  )
}

/** An apprentice who was not yet shown the wheel is told that the first lesson needs the teacher. */
const Supervised = ({ learning, learnerId }: Pick<LessonListProps, 'learning' | 'learnerId'>) => {
  const t = useTexts()
  const learner = useApp((app) => app.people.find(({ id }) => id === learnerId))
  const known = learning.authorisations.some(({ personId }) => personId === learnerId)
  if (learner?.apprentice !== 'yes' || known) return null
  return (
    <p className="teach-caution">
      <span aria-hidden="true">!</span> {t('teach:notAuthorised', { name: learner.name })}
    </p>
  )
}

interface LessonRowProps {
  readonly line: LessonLine
  readonly progress: Progress | null
  /** Undefined: not set; null: for any day. */
  readonly due: string | null | undefined
  readonly learnerId: string | null
}

const LessonRow = ({ line: { lesson, own }, progress, due, learnerId }: LessonRowProps) => {
  const t = useTexts()
  const { doneAt = null, step = 0 } = progress ?? {}
  const left = useTeaching(({ leftId }) => leftId === lesson.id)
  const title = useRef<HTMLButtonElement>(null)
  const nowhere = useRef(null)
  useFocusKept(left ? title : nowhere, left)
  const under = doneAt === null && step > 0
  const open = () => {
    useTeaching.setState({ learnerId, learnerChosen: true })
    openLesson(lesson, progress)
  }
  return (
    <li className="teach-row">
      <button type="button" className="teach-open" ref={title} onClick={open}>
        {lesson.title}
      </button>
      <p>{lesson.about}</p>
      <p className="muted">
        {t('teach:row.minutes', { count: lesson.minutes })}
        {own && ` · ${t('teach:row.own')}`}
        {doneAt !== null && ` · ${t('teach:row.done', { date: shortDate(doneAt) })}`}
        {under && ` · ${t('teach:row.at', { step: step + 1, steps: lesson.steps.length })}`}
        {due !== undefined &&
          doneAt === null &&
          ` · ${t(due ? 'teach:row.due' : 'teach:row.set', { date: due ?? '' })}`}
      </p>
    </li>
  )
}
