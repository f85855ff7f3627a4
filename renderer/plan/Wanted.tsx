import type { Job } from '../../geometry/job.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { JobField } from '../app/JobField.tsx'
import { useApp } from '../app/store.ts'
import { Options } from '../ui/Options.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { Curve } from './Curve.tsx'
import { Freshen } from './Freshen.tsx'
import { meetsPreset, type Preset, presetsFor, withPreset } from './presets.ts'
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
      <Curve key={tool.id} job={job} />
      <Task job={job} tool={tool} />
      <CommonPractice job={job} tool={tool} />
    </section>
  )
}

const Task = ({ job, tool }: WantedProps) => {
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
      {task === 'freshen' && <Freshen job={job} tool={tool} />}
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
  const presets = presetsFor(tool)
  if (presets.length === 0) return <p className="wanted-preset muted">{t('plan:preset.none')}</p>
  return (
    <div className="wanted-preset">
      <p>
        <strong>{t('plan:preset.heading')}</strong> <span className="muted">{t(`common:toolKind.${tool.kind}`)}</span>
      </p>
      <ul>
        {presets.map((preset) => (
          <OnePractice key={preset.purpose} job={job} preset={preset} />
        ))}
      </ul>
    </div>
  )
}

const OnePractice = ({ job, preset }: { readonly job: Job; readonly preset: Preset }) => {
  const t = useTexts()
  const words = usePresetWords()
  const editJob = useApp((app) => app.editJob)
  const purpose = t(`plan:purpose.${preset.purpose}`)
  return (
    <li>
      {meetsPreset(job, preset) ? (
        <strong className="block">{purpose}</strong>
      ) : (
        <button
          type="button"
          className="word"
          aria-label={t('plan:preset.takeLabel', { purpose })}
          onClick={() => void editJob((now) => withPreset(now, preset))}
        >
          {purpose}
        </button>
      )}{' '}
      <span className="muted">{words(preset)}</span>
    </li>
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
