import './write/writeTexts.ts'
import type { Problem } from '../../geometry/result.ts'
import { problemSentence, useTexts } from '../ui/texts.tsx'

interface LessonProblemsProps {
  readonly problems: readonly Problem[]
  /** Where each is: by its line in a file, or by its step in a lesson that is being written. */
  readonly by: 'line' | 'step'
}

const STEP = /^steps\.(\d+)/

/** What is wrong with a lesson, place by place. */
export const LessonProblems = ({ problems, by }: LessonProblemsProps) => {
  const t = useTexts()
  const where = ({ params, path }: Problem): string | null => {
    if (by === 'line') return 'line' in params ? t('teach:file.line', { line: params.line }) : null
    const [, step] = STEP.exec(path) ?? []
    return step === undefined ? null : t('write:inStep', { step: Number(step) + 1 })
  }
  return (
    <ul className="teach-problems">
      {problems.map((found) => (
        <li key={`${found.code} ${found.path}`}>
          {where(found) !== null && <strong>{where(found)} </strong>}
          {problemSentence(t, found)}
        </li>
      ))}
    </ul>
  )
}
