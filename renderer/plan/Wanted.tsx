import type { Job } from '../../geometry/job.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { JobField } from '../app/JobField.tsx'
import { useApp } from '../app/store.ts'
import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { type CurveKey, curveIn, curveKeyOf, curveKeys, withCurve } from './aim.ts'
import { meetsPreset, type Preset, presetFor, withPreset } from './presets.ts'
import './wanted.css'

interface WantedProps {
  readonly job: Job
  readonly tool: Tool
}

/** What the wood should see: shaving, curve, and what kind of grinding this is. */
export const Wanted = ({ job, tool }: WantedProps) => {
  const t = useTexts()
  return (
    <section className="wanted" aria-label={t('plan:wanted.heading')}>
      <h2>{t('plan:wanted.heading')}</h2>
      <JobField
        path="aim.shavingDepthMm"
        size="large"
        label={t('plan:wanted.shaving')}
        value={job.aim.shavingDepthMm}
        change={(now, value) => ({ ...now, aim: { ...now.aim, shavingDepthMm: value ?? now.aim.shavingDepthMm } })}
      />
      <Curve job={job} />
      <Task job={job} />
      <CommonPractice job={job} tool={tool} />
    </section>
  )
}

const Curve = ({ job }: { readonly job: Job }) => {
  const t = useTexts()
  const editJob = useApp((app) => app.editJob)
  const plan = useApp((app) => app.report?.plan ?? null)
  const key = curveKeyOf(job)
  const ways = curveKeys.filter((each) => each !== 'woodReliefMm' || job.blade.seatAngleDeg !== null)
  const choose = (next: CurveKey) => plan && editJob((now) => withCurve(now, next, curveIn(plan, next)))
  return (
    <div className="wanted-curve">
      <JobField
        key={key}
        path={`aim.${key}`}
        size="large"
        label={t(`plan:curve.${key}.name`)}
        value={job.aim[key]}
        change={(now, value) => withCurve(now, key, value)}
      />
      <Options
        legend={t('plan:curve.legend')}
        options={ways.map((value) => ({ value, name: t(`plan:curve.${value}.way`) }))}
        value={key}
        onChoose={choose}
      />
    </div>
  )
}

const Task = ({ job }: { readonly job: Job }) => {
  const t = useTexts()
  const editJob = useApp((app) => app.editJob)
  const { task, bandMm } = job.aim
  return (
    <div className="wanted-task">
      <Options
        legend={t('plan:task.legend')}
        options={(['reshape', 'freshen'] as const).map((value) => ({ value, name: t(`common:task.${value}`) }))}
        value={task}
        onChoose={(next) => editJob((now) => ({ ...now, aim: { ...now.aim, task: next } }))}
      />
      <p className="muted">{t(`plan:task.${task}`)}</p>
      {task === 'freshen' && (
        <JobField
          path="aim.bandMm"
          size="small"
          value={bandMm}
          change={(now, value) => ({ ...now, aim: { ...now.aim, bandMm: value ?? now.aim.bandMm } })}
        />
      )}
    </div>
  )
}

const CommonPractice = ({ job, tool }: WantedProps) => {
  const t = useTexts()
  const words = usePresetWords()
  const editJob = useApp((app) => app.editJob)
  const preset = presetFor(tool)
  if (!preset) return <p className="wanted-preset muted">{t('plan:preset.none')}</p>
  return (
    <div className="wanted-preset">
      <p>
        <strong>{t('plan:preset.heading')}</strong> <span className="muted">{t(`common:toolKind.${tool.kind}`)}</span>
      </p>
      <p>{words(preset)}</p>
      {meetsPreset(job, preset) ? (
        <p className="muted">{t('plan:preset.met')}</p>
      ) : (
        <button type="button" className="key" onClick={() => void editJob((now) => withPreset(now, preset))}>
          {t('plan:preset.take')}
        </button>
      )}
    </div>
  )
}

const usePresetWords = (): ((preset: Preset) => string) => {
  const t = useTexts()
  const { inWords } = useFigures()
  return (preset) => {
    const shaving = inWords(preset.shavingDepthMm, 'mm', 2)
    if ('woodReliefMm' in preset)
      return t('plan:preset.wood', { shaving, relief: inWords(preset.woodReliefMm, 'mm', 2) })
    if ('edgeRadiusMm' in preset)
      return t('plan:preset.radius', { shaving, radius: inWords(preset.edgeRadiusMm, 'mm', 0) })
    return t('plan:preset.straight', { shaving })
  }
}
