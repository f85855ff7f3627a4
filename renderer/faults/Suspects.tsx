import { type EngineCause, engineCauses, type Suspect, withFault } from '../../geometry/diagnose.ts'
import type { Job } from '../../geometry/job.ts'
import { go } from '../app/route.ts'
import { useApp } from '../app/store.ts'
import { useTexts } from '../ui/texts.tsx'

interface SuspectsProps {
  readonly job: Job
  readonly suspects: readonly Suspect[]
}

/** More suspects than these are none. */
const MOST = 8

const isEngine = (cause: Suspect['cause']): cause is EngineCause => engineCauses.some((each) => each === cause)

/** Likely causes in order, with what would tell them apart and the cure; those of the wheel can be shown on the model. */
export const Suspects = ({ job, suspects }: SuspectsProps) => {
  const t = useTexts()
  if (suspects.length === 0) return <p className="muted">{t('faults:suspects.none')}</p>
  const alike = suspects.filter(({ rank }) => rank === 1).length > 1
  return (
    <>
      {alike && <p>{t('faults:suspects.alike')}</p>}
      <ol className="suspects">
        {suspects.slice(0, MOST).map((suspect) => (
          <One key={suspect.cause} job={job} suspect={suspect} />
        ))}
      </ol>
    </>
  )
}

interface OneProps {
  readonly job: Job
  readonly suspect: Suspect
}

const One = ({ job, suspect }: OneProps) => {
  const t = useTexts()
  const code = useApp((app) => app.tool?.code ?? null)
  const { cause, rank, byEngine, symptoms } = suspect
  const name = t(`faults:cause.${cause}.name`)
  const show = (engineCause: EngineCause) => {
    useApp.setState({ trial: { of: 'fault', job: withFault(job, engineCause), name } })
    go('grind', code)
  }
  return (
    <li value={rank}>
      <strong>{name}</strong>{' '}
      <span className="muted">{t(byEngine ? 'faults:suspects.byEngine' : 'faults:suspects.byPractice')}</span>
      <br />
      {t('faults:suspects.shows', { symptoms: symptoms.map((symptom) => t(`faults:symptom.${symptom}`)).join('; ') })}
      <br />
      {t('faults:suspects.test', { test: t(`faults:cause.${cause}.test`) })}
      <br />
      {t('faults:suspects.cure', { cure: t(`faults:cause.${cause}.cure`) })}{' '}
      {isEngine(cause) && (
        <button
          type="button"
          className="word"
          aria-label={t('faults:suspects.showLabel', { cause: name })}
          onClick={() => show(cause)}
        >
          {t('faults:suspects.show')}
        </button>
      )}
    </li>
  )
}
