import { useState } from 'react'
import type { Problem } from '../../geometry/result.ts'
import { acceptOf } from '../../main/contract/fileKinds.ts'
import { say } from '../app/store.ts'
import { call } from '../app/transport.ts'
import { FileKey } from '../ui/FileKey.tsx'
import { problemSentence, useTexts } from '../ui/texts.tsx'

/** Takes in a lesson that a colleague wrote; what is wrong with it is told with its lines. */
export const LessonFile = () => {
  const t = useTexts()
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const take = async (file: File | undefined) => {
    if (!file) return
    const added = await call('lesson.add', { text: await file.text() })
    setProblems(added.ok ? [] : added.problems)
    if (added.ok) say('common:message.lesson.add', { label: added.value.value.title }, added.value.changeId)
  }
  return (
    <div>
      <FileKey accept={`${acceptOf('lesson')},.json`} name={t('teach:file.take')} onPick={take} />
      {problems.length > 0 && (
        <div role="alert">
          <p>{t('teach:file.refused')}</p>
          <LessonProblems problems={problems} />
        </div>
      )}
    </div>
  )
}

/** What is wrong with a lesson, line by line. */
export const LessonProblems = ({ problems }: { readonly problems: readonly Problem[] }) => {
  const t = useTexts()
  return (
    <ul className="teach-problems">
      {problems.map((found) => (
        <li key={`${found.code} ${found.path}`}>
          {'line' in found.params && <strong>{t('teach:file.line', { line: found.params.line })} </strong>}
          {problemSentence(t, found)}
        </li>
      ))}
    </ul>
  )
}
