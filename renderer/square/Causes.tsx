import type { Explanation, Squareness } from '../../geometry/explainSkew.ts'
import type { Job } from '../../geometry/job.ts'
import type { SquareReading } from '../../geometry/squareness.ts'
import { tellApart } from '../../geometry/tellApart.ts'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { OVER_MM, overLengthMm, reckonsWith, withCause, withoutCauses } from './corrections.ts'

const PERCENT = 100

interface CausesProps {
  readonly job: Job
  readonly readings: readonly SquareReading[]
  readonly found: Squareness
}

/** What may have turned the edge, likeliest first, and what cannot be told apart. */
export const Causes = ({ job, readings, found }: CausesProps) => {
  const t = useTexts()
  const editJob = useApp((app) => app.editJob)
  return (
    <>
      {found.contradict && <p className="caution">{t('square:causes.contradict')}</p>}
      <ul className="square-causes">
        {found.explanations.map((each) => (
          <OneCause key={each.cause} job={job} explanation={each} />
        ))}
      </ul>
      {found.alike.map((group) => (
        <div key={group.join()} className="square-alike muted">
          <p>{t('square:causes.alike', { causes: group.map((cause) => t(`square:cause.${cause}`)).join('; ') })}</p>
          <ul>
            {tellApart(group, readings).map((way) => (
              <li key={way}>{t(`square:tellApart.${way}`)}</li>
            ))}
          </ul>
        </div>
      ))}
      {reckonsWith(job) && (
        <p>
          {t('square:causes.reckoned')}{' '}
          <button type="button" className="word" onClick={() => void editJob(withoutCauses)}>
            {t('square:causes.takeBack')}
          </button>
        </p>
      )}
    </>
  )
}

/** Nothing is certain by a square alone: no cause is told as all or nothing. */
const shareKey = (share: number) => (share < 1 ? 'leastShare' : share >= PERCENT ? 'mostShare' : 'share')

const OneCause = ({ job, explanation }: { readonly job: Job; readonly explanation: Explanation }) => {
  const t = useTexts()
  const editJob = useApp((app) => app.editJob)
  const words = useSizeWords()
  const { cause, size, likelihood } = explanation
  const taken = withCause(job, cause, size)
  const share = Math.round(likelihood * PERCENT)
  const name = t(`square:cause.${cause}`)
  return (
    <li>
      <span className="square-bar" aria-hidden="true">
        <span style={{ width: `${share}%` }} />
      </span>
      <span>
        <strong>{name}</strong> <span className="muted">{t(`square:causes.${shareKey(share)}`, { share })}</span>
        <br />
        {words(explanation)}
        <br />
        <span className="muted">{t(`square:cure.${cause}`)}</span>{' '}
        {taken && (
          <button
            type="button"
            className="word"
            aria-label={t('square:causes.takeLabel', { cause: name })}
            onClick={() => void editJob((now) => withCause(now, cause, size) ?? now)}
          >
            {t('square:causes.take')}
          </button>
        )}
      </span>
    </li>
  )
}

/** Angles of the bar are told as a difference over a length: that is what a rule shows. */
const useSizeWords = () => {
  const t = useTexts()
  const { inWords } = useFigures()
  return ({ cause, size }: Explanation): string => {
    const side = t(`common:side.${size > 0 ? 'right' : 'left'}`)
    if (cause === 'mounting') return t('square:size.mounting', { size: inWords(Math.abs(size), 'deg', 2), side })
    if (cause === 'wheelCone' || cause === 'stops')
      return t(`square:size.${cause}`, { size: inWords(Math.abs(size), 'mm', 2), side })
    return t(`square:size.${cause}`, {
      size: inWords(Math.abs(overLengthMm(size)), 'mm', 2),
      over: inWords(OVER_MM, 'mm', 0),
      side,
    })
  }
}
