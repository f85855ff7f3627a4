import type { Person } from '../../main/contract/people.ts'
import type { Learning, LessonLine, Progress } from '../../main/contract/teaching.ts'
import { shortDate } from '../ui/dates.ts'
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
  const any = learning.progress.some(({ personId }) => personId === person.id)
  if (!any) return <p className="muted">{t('teach:standing.none', { name: person.name })}</p>
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
      <button
        type="button"
        className="word"
        onClick={() => void note('progress.forget', { personId: person.id }, person.name)}
      >
        {t('teach:standing.forget', { name: person.name })}
      </button>
    </>
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
