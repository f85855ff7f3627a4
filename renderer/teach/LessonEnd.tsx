import { useRef } from 'react'
import type { Lesson } from '../../geometry/lesson/lesson.ts'
import type { Learning, LessonLine } from '../../main/contract/teaching.ts'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFocusKept } from '../ui/useFocusKept.ts'
import { closeLesson, goToStep, openLesson, useTeaching } from './teaching.ts'
import { progressOf } from './useLessons.ts'

interface LessonEndProps {
  readonly lesson: Lesson
  readonly lines: readonly LessonLine[]
  readonly learning: Learning
}

/** What was answered, what is worth another look, and the lesson that comes next. */
export const LessonEnd = ({ lesson, lines, learning }: LessonEndProps) => {
  const t = useTexts()
  const { answers, learnerId } = useTeaching()
  const heading = useRef<HTMLHeadingElement>(null)
  useFocusKept(heading, lesson.id)
  const asking = lesson.steps.flatMap((step, k) => (step.ask ? [k] : []))
  const right = asking.filter((k) => answers[k]?.right)
  const open = asking.filter((k) => !answers[k]?.right)
  const next = lines[lines.findIndex((line) => line.lesson.id === lesson.id) + 1]?.lesson
  return (
    <div className="teach-end">
      <h2 ref={heading} tabIndex={-1}>
        {t('teach:end.heading', { title: lesson.title })}
      </h2>
      <p>{lesson.about}</p>
      <p>{t('teach:end.right', { count: right.length, of: asking.length })}</p>
      <Waits lesson={lesson} lines={lines} learning={learning} />
      {open.length > 0 && (
        <>
          <p>{t('teach:end.again')}</p>
          <ul>
            {open.map((k) => (
              <li key={k}>
                <button type="button" className="word" onClick={() => goToStep(k)}>
                  {lesson.steps[k]?.heading}
                </button>
              </li>
            ))}
          </ul>
        </>
      )}
      <div className="teach-ways">
        <button type="button" className="key" onClick={closeLesson}>
          {t('teach:toLessons')}
        </button>
        {next && (
          <button
            type="button"
            className="key key-main"
            onClick={() => openLesson(next, progressOf(learning, learnerId, next.id))}
          >
            {t('teach:end.next', { title: next.title })}
          </button>
        )}
      </div>
    </div>
  )
}

/** An apprentice's first lesson counts once the teacher has noted that the wheel was shown. */
const Waits = ({ lesson, lines, learning }: LessonEndProps) => {
  const t = useTexts()
  const learnerId = useTeaching((teaching) => teaching.learnerId)
  const learner = useApp((app) => app.people.find(({ id }) => id === learnerId))
  const authorised = learning.authorisations.some(({ personId }) => personId === learnerId)
  const first = lines[0]?.lesson.id === lesson.id
  if (!first || learner?.apprentice !== 'yes' || authorised) return null
  return (
    <p className="teach-caution">
      <span aria-hidden="true">!</span> {t('teach:end.waits', { name: learner.name })}
    </p>
  )
}
