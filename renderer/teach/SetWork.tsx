import { useState } from 'react'
import type { Person } from '../../main/contract/people.ts'
import type { Learning, LessonLine } from '../../main/contract/teaching.ts'
import { shortDate } from '../ui/dates.ts'
import { DayEntry } from '../ui/Entry.tsx'
import { useTexts } from '../ui/texts.tsx'
import { LessonChoice } from './LessonChoice.tsx'
import { note } from './teacher.ts'
import { progressOf } from './useLessons.ts'

interface SetWorkProps {
  readonly person: Person
  readonly lines: readonly LessonLine[]
  readonly learning: Learning
}

/** Lessons that somebody is to do, and until when. */
export const SetWork = ({ person, lines, learning }: SetWorkProps) => {
  const t = useTexts()
  const [lessonId, setLessonId] = useState(lines[0]?.lesson.id ?? '')
  const [dueOn, setDueOn] = useState('')
  const set = learning.setWork.filter(({ personId }) => personId === person.id)
  return (
    <>
      <form
        className="teach-row-form"
        onSubmit={(event) => {
          event.preventDefault()
          void note('setWork.set', { personId: person.id, lessonId, dueOn: dueOn === '' ? null : dueOn }, person.name)
        }}
      >
        <LessonChoice lines={lines} name={t('teach:set.lesson')} value={lessonId} onChange={setLessonId} />
        <DayEntry name={t('teach:set.due')} value={dueOn} onChange={setDueOn} />
        <button type="submit" className="key">
          {t('teach:set.key', { name: person.name })}
        </button>
      </form>
      {set.length > 0 && (
        <ul className="teach-set">
          {set.map((work) => {
            const title = lines.find(({ lesson }) => lesson.id === work.lessonId)?.lesson.title ?? work.lessonId
            const done = progressOf(learning, person.id, work.lessonId)?.doneAt ?? null
            const state = done ? 'done' : work.dueOn ? 'until' : 'open'
            return (
              <li key={work.lessonId}>
                {t(`teach:set.${state}`, { title, date: shortDate(done ?? work.dueOn ?? work.setAt) })}{' '}
                <button
                  type="button"
                  className="word"
                  aria-label={t('teach:set.removeLabel', { title })}
                  onClick={() =>
                    void note('setWork.remove', { personId: person.id, lessonId: work.lessonId }, person.name)
                  }
                >
                  {t('teach:takeBack')}
                </button>
              </li>
            )
          })}
        </ul>
      )}
    </>
  )
}
