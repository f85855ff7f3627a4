import './writeTexts.ts'
import { useState } from 'react'
import { useTexts } from '../../ui/texts.tsx'
import { LessonChoice } from '../LessonChoice.tsx'
import { useLessons } from '../useLessons.ts'
import { beginFrom, useDraft } from './draft.ts'
import { Editor } from './Editor.tsx'
import './write.css'

/** Where a teacher writes lessons: begun from any that there is, checked while it is written, tried, and kept. */
export const WritePart = () => {
  const t = useTexts()
  const known = useLessons()
  const draft = useDraft((now) => now.draft)
  if (!known) return <p className="page-note">{t('common:opening')}</p>
  return draft ? <Editor draft={draft} /> : <Begin lines={known.lines} />
}

const Begin = ({ lines }: { readonly lines: NonNullable<ReturnType<typeof useLessons>>['lines'] }) => {
  const t = useTexts()
  const [lessonId, setLessonId] = useState(lines.at(-1)?.lesson.id ?? '')
  const line = lines.find(({ lesson }) => lesson.id === lessonId)
  return (
    <div className="write-begin">
      <p>{t('write:how')}</p>
      <div className="teach-row-form">
        <LessonChoice lines={lines} name={t('write:from')} value={lessonId} onChange={setLessonId} />
        <button type="button" className="key key-main" disabled={!line} onClick={() => line && beginFrom(line, lines)}>
          {t(line?.own ? 'write:change' : 'write:copy')}
        </button>
      </div>
    </div>
  )
}
