import { sweepsOf } from '../../geometry/motion.ts'
import { GUESSED_SWEEP_SECONDS } from '../../geometry/removal.ts'
import type { Report, TurnsReport } from '../../geometry/report.ts'
import { fixed } from '../../main/contract/figures.ts'
import { useApp } from '../app/store.ts'
import { useLearnt } from '../learnt/useLearnt.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { certaintyOf } from './certainty.ts'

const SECONDS = 60

interface SureProps {
  readonly report: Report
  readonly turns: TurnsReport | null
}

/** What the answer costs and how sure each figure of it is. */
export const Sure = ({ report, turns }: SureProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const stationId = useApp((app) => app.job?.stationId ?? null)
  const { removal } = useLearnt(null, stationId)
  const { job, grind, freedom, learnt } = report
  const pitchMm = job.fixture.screwPitchMm
  const freePlayMm = turns && pitchMm !== null ? ((turns.left + turns.right) / 2) * pitchMm : null
  const sure = certaintyOf(report, freePlayMm)
  const seconds = removal?.sweepSeconds ?? GUESSED_SWEEP_SECONDS
  const model = freedom.turnsForAim
  const rows = [
    !freePlayMm
      ? null
      : sure.freePlayMm === null
        ? t('plan:sure.freePlayUntold')
        : t('plan:sure.freePlay', { error: inWords(sure.freePlayMm, 'mm', 2) }),
    freedom.turnsCalibrated && model && pitchMm !== null
      ? t('plan:sure.model', { play: inWords(((model.left + model.right) / 2) * pitchMm, 'mm', 2) })
      : null,
    learnt
      ? t('plan:sure.learnt', {
          relief: inWords(learnt.reliefMm, 'mm', 2),
          error: inWords(learnt.standardErrorMm, 'mm', 2),
        })
      : sure.reliefMm === null
        ? null
        : t('plan:sure.relief', { error: inWords(sure.reliefMm, 'mm', 2) }),
    sure.bevelDeg === null ? null : t('plan:sure.bevel', { error: inWords(sure.bevelDeg, 'deg', 1) }),
    t('plan:sure.steel', {
      setBack: inWords(sure.setBackMm, 'mm', 2),
      error: inWords(sure.setBackErrorMm, 'mm', 2),
      volume: inWords(grind.volumeRemovedMm3, 'mm3', 0),
    }),
    t(removal?.sweepSeconds ? 'plan:sure.timeMeasured' : 'plan:sure.timeGuessed', {
      minutes: Math.max(1, Math.round((sweepsOf(job) * seconds) / SECONDS)),
      seconds: fixed(seconds, 1),
      count: sweepsOf(job),
    }),
  ].filter((row) => row !== null)
  return (
    <section aria-label={t('plan:sure.name')}>
      <h2>{t('plan:sure.name')}</h2>
      <ul className="sure-list">
        {rows.map((row) => (
          <li key={row}>{row}</li>
        ))}
      </ul>
      <p className="muted">{t('plan:sure.meaning')}</p>
    </section>
  )
}
