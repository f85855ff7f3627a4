import { useState } from 'react'
import type { Problem } from '../../geometry/result.ts'
import { acceptOf } from '../../main/contract/fileKinds.ts'
import { say } from '../app/store.ts'
import { call } from '../app/transport.ts'
import { FileKey } from '../ui/FileKey.tsx'
import { useTexts } from '../ui/texts.tsx'
import { LessonProblems } from './LessonProblems.tsx'

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
          <LessonProblems problems={problems} by="line" />
        </div>
      )}
    </div>
  )
}
