import { ProblemHelp } from '../help/ProblemHelp.tsx'
import { problemSentence, useTexts } from '../ui/texts.tsx'
import { useApp } from './store.ts'
import { solveHeld } from './storeJob.ts'

/** Why the figures on the screen are the last good ones. A field's own problem stands at the field. */
export const ProblemNote = () => {
  const t = useTexts()
  const problems = useApp((app) => app.problems)
  const at = useApp((app) => app.problemAt)
  const report = useApp((app) => app.report)
  if (problems.length === 0) return null
  return (
    <div className="problem-note" role="alert">
      {at === null &&
        problems.map((found) => (
          <p key={`${found.code} ${found.path}`} className="caution">
            {problemSentence(t, found)} <ProblemHelp code={found.code} />
          </p>
        ))}
      {problems.some(({ code }) => code === 'solverLost') && (
        <button type="button" className="key" onClick={() => void solveHeld()}>
          {t('common:tryAgain')}
        </button>
      )}
      {report && <p>{t('common:lastGood')}</p>}
    </div>
  )
}
