import { useState } from 'react'
import type { Person } from '../../main/contract/people.ts'
import type { Learning, LessonLine, Progress } from '../../main/contract/teaching.ts'
import { shortDate } from '../ui/dates.ts'
import { Sheet } from '../ui/Sheet.tsx'
import { useTexts } from '../ui/texts.tsx'
import { note } from './teacher.ts'
import { progressOf } from './useLessons.ts'

interface StandingProps {
  readonly person: Person
  readonly lines: readonly LessonLine[]
  readonly learning: Learning
}

/** Every lesson with how far somebody is in it: when, how many right, after how many tries. */
export const Standing = ({ person, lines, learning }: StandingProps) => {
  const t = useTexts()
  const [asks, setAsks] = useState(false)
  const lessons = learning.progress.filter(({ personId }) => personId === person.id).length
  if (lessons === 0) return <p className="muted">{t('teach:standing.none', { name: person.name })}</p>
  return (
    <>
      <table className="teach-table">
        <caption className="unseen">{t('teach:standing.caption', { name: person.name })}</caption>
        <thead>
          <tr>
            {(['lesson', 'state', 'right', 'tries'] as const).map((column) => (
              <th key={column} scope="col">
                {t(`teach:standing.${column}`)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <Row key={line.lesson.id} line={line} progress={progressOf(learning, person.id, line.lesson.id)} />
          ))}
        </tbody>
      </table>
      <button type="button" className="word" onClick={() => setAsks(true)}>
        {t('teach:standing.forget', { name: person.name })}
      </button>
      {asks && <ForgetSheet person={person} lessons={lessons} onClose={() => setAsks(false)} />}
    </>
  )
}

interface ForgetSheetProps {
  readonly person: Person
  readonly lessons: number
  readonly onClose: () => void
}

/** Asks before anything is forgotten: no undo brings it back. */
const ForgetSheet = ({ person, lessons, onClose }: ForgetSheetProps) => {
  const t = useTexts()
  const forget = async (): Promise<void> => {
    await note('progress.forget', { personId: person.id }, person.name)
    onClose()
  }
  return (
    <Sheet title={t('teach:standing.forget', { name: person.name })} onClose={onClose}>
      <p>{t('teach:standing.forgetSheet.what', { count: lessons })}</p>
      <p className="caution">{t('teach:standing.forgetSheet.forGood')}</p>
      <button type="button" className="key" onClick={() => void forget()}>
        {t('teach:standing.forgetSheet.key')}
      </button>
    </Sheet>
  )
}

const Row = ({ line: { lesson }, progress }: { readonly line: LessonLine; readonly progress: Progress | null }) => {
  const t = useTexts()
  const asked = lesson.steps.filter(({ ask }) => ask !== null).length
  const answers = Object.values(progress?.answers ?? {})
  const state = !progress ? 'new' : progress.doneAt ? 'done' : 'open'
  return (
    <tr>
      <th scope="row">{lesson.title}</th>
      <td>
        {t(`teach:standing.is.${state}`, {
          date: shortDate(progress?.doneAt ?? progress?.at ?? ''),
          step: (progress?.step ?? 0) + 1,
          steps: lesson.steps.length,
        })}
      </td>
      <td>{progress && t('teach:standing.of', { right: answers.filter(({ right }) => right).length, asked })}</td>
      <td>{progress && answers.reduce((sum, { tries }) => sum + tries, 0)}</td>
    </tr>
  )
}
