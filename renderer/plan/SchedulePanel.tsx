import { useEffect, useRef, useState } from 'react'
import type { AimCurve } from '../../geometry/aimCurve.ts'
import type { Job } from '../../geometry/job.ts'
import type { Report } from '../../geometry/report.ts'
import type { Problem, Result } from '../../geometry/result.ts'
import type { Schedule } from '../../geometry/schedule.ts'
import type { SchedulePlan } from '../../geometry/schedulePlans.ts'
import { withSettings } from '../../geometry/scheduleSettings.ts'
import { useApp } from '../app/store.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { Options } from '../ui/Options.tsx'
import { Problems } from '../ui/Problems.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { type Aside, doAside } from '../worker/aside.ts'
import { worthTelling } from './worthTelling.ts'

type Shape = 'arc' | 'easedCorners'

interface Search {
  readonly share: number | null
  readonly found: Schedule | null
  readonly problems: readonly Problem[]
  /** The job and shape it was sought for: an answer to another question is none. */
  readonly asked: string
}

const none: Search = { share: null, found: null, problems: [], asked: '' }
const MOST_SETTINGS_STEPS = 100

/** Everything of a job that a search goes by: what a plan then sets is not among it. */
const soughtBy = ({ motion, grid: _, tolerances: __, ...job }: Job): unknown => {
  const { path, endShare, fingerReachMm, loadN, removalPerSweepMm3, bedStiffnessNPerMm3 } = motion
  return [job, path, endShare, fingerReachMm, loadN, removalPerSweepMm3, bedStiffnessNPerMm3]
}

/** Two or three settings of the stops in turn, where one leaves a roof. */
export const SchedulePanel = ({ job, report }: { readonly job: Job; readonly report: Report }) => {
  const t = useTexts()
  const [shape, setShape] = useState<Shape>('arc')
  const [flatShare, setFlatShare] = useState(0.6)
  const [search, setSearch] = useState(none)
  const running = useRef<Aside<Result<Schedule>> | null>(null)
  const asked = JSON.stringify([soughtBy(job), shape, shape === 'arc' ? 0 : flatShare])
  useEffect(() => () => running.current?.giveUp(), [])
  const look = async () => {
    const { reliefMm } = report.plan
    const curve: AimCurve = shape === 'arc' ? { kind: 'arc', reliefMm } : { kind: shape, reliefMm, flatShare }
    setSearch({ ...none, share: 0, asked })
    running.current = doAside({ type: 'schedule', job, curve }, (said) => {
      if (said.type === 'scheduling') setSearch((now) => ({ ...now, share: said.share }))
      return said.type === 'scheduled' ? said.result : undefined
    })
    const result = await running.current.result
    const problems = result === null || result.ok ? [] : result.problems
    setSearch({ share: null, found: result?.ok ? result.value : null, problems, asked })
  }
  const answers = search.asked === asked
  const found = answers ? search.found : null
  return (
    <section aria-label={t('plan:schedule.name')}>
      <h2>{t('plan:schedule.name')}</h2>
      <p className="muted">{t('plan:schedule.why')}</p>
      <Options
        legend={t('plan:schedule.shape')}
        hideLegend
        options={(['arc', 'easedCorners'] as const).map((value) => ({ value, name: t(`plan:schedule.${value}`) }))}
        value={shape}
        onChoose={(value) => setShape(value)}
      />
      {shape === 'easedCorners' && (
        <FigureField
          quantity="aim.flatShare"
          size="small"
          value={flatShare}
          onCommit={(value) => value !== null && setFlatShare(value)}
        />
      )}
      {search.share === null ? (
        <button type="button" className="key" onClick={() => void look()} disabled={report.plan.reliefMm === 0}>
          {t('plan:schedule.look')}
        </button>
      ) : (
        <p>
          <progress value={Math.round(search.share * MOST_SETTINGS_STEPS)} max={MOST_SETTINGS_STEPS} />{' '}
          <button type="button" className="word" onClick={() => running.current?.giveUp()}>
            {t('plan:schedule.stop')}
          </button>
        </p>
      )}
      {answers && <Problems problems={search.problems} />}
      {!answers && search.share === null && search.found && <p role="status">{t('plan:schedule.changed')}</p>}
      {found && <Plans schedule={found} job={job} />}
    </section>
  )
}

const Plans = ({ schedule, job }: { readonly schedule: Schedule; readonly job: Job }) => {
  const t = useTexts()
  return (
    <>
      {schedule.code !== 'reachable' && <p className="caution">{t(`plan:schedule.code.${schedule.code}`)}</p>}
      <ul className="schedule-plans">
        {worthTelling(schedule.plans).map((plan) => (
          <Plan key={plan.settings.length} plan={plan} job={job} />
        ))}
      </ul>
    </>
  )
}

const Plan = ({ plan, job }: { readonly plan: SchedulePlan; readonly job: Job }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const editJob = useApp((app) => app.editJob)
  const taken = JSON.stringify(withSettings(job, plan.settings).motion) === JSON.stringify(job.motion)
  const stops = plan.settings.map((setting) =>
    t('plan:schedule.setting', {
      turns: inWords((setting.stopTurnsLeft + setting.stopTurnsRight) / 2, 'turn', 2),
      sweeps: setting.sweeps,
    }),
  )
  const count = plan.settings.length
  return (
    <li>
      <strong>{t('plan:schedule.with', { count })}</strong>{' '}
      {t('plan:schedule.off', { off: inWords(plan.deviationMm, 'mm', 3) })}
      <br />
      <span className="muted">{stops.join(t('plan:schedule.then'))}</span>
      <br />
      {taken ? (
        <span className="muted">{t('plan:schedule.taken')}</span>
      ) : (
        <button
          type="button"
          className="word"
          aria-label={t('plan:schedule.takeLabel', { count })}
          onClick={() => void editJob((now) => withSettings(now, plan.settings))}
        >
          {t('plan:schedule.take')}
        </button>
      )}
    </li>
  )
}
