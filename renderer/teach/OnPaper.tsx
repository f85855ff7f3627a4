import { useState } from 'react'
import type { LessonLine } from '../../main/contract/teaching.ts'
import { TextEntry } from '../ui/Entry.tsx'
import { useTexts } from '../ui/texts.tsx'
import { LessonChoice } from './LessonChoice.tsx'
import { makeFile } from './teacher.ts'

/** Most digits of a set's number: enough for every class of a lifetime. */
const SET = /^\d{1,6}$/

/** A lesson on paper: its questions with figures of their own for every set, and the answers that belong to them. */
export const OnPaper = ({ lines }: { readonly lines: readonly LessonLine[] }) => {
  const t = useTexts()
  const [lessonId, setLessonId] = useState(lines[1]?.lesson.id ?? '')
  const [set, setSet] = useState('1')
  const sound = SET.test(set.trim())
  const make = (which: 'questions' | 'answers') =>
    void makeFile('lesson.sheet', { lessonId, seed: Number(set), with: which })
  return (
    <section aria-labelledby="teach-paper">
      <h2 id="teach-paper">{t('teach:paper.heading')}</h2>
      <p>{t('teach:paper.note')}</p>
      <div className="teach-row-form">
        <LessonChoice lines={lines} name={t('teach:set.lesson')} value={lessonId} onChange={setLessonId} />
        <TextEntry
          name={t('teach:paper.set')}
          value={set}
          onChange={setSet}
          problem={sound ? null : t('teach:paper.setWrong')}
        />
        <button type="button" className="key" disabled={!sound} onClick={() => make('questions')}>
          {t('teach:paper.questions')}
        </button>
        <button type="button" className="key" disabled={!sound} onClick={() => make('answers')}>
          {t('teach:paper.answers')}
        </button>
        <button type="button" className="word" onClick={() => void makeFile('lesson.file', { lessonId })}>
          {t('teach:paper.file')}
        </button>
      </div>
    </section>
  )
}
