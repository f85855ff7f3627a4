import type { Job } from '../../geometry/job.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { useTexts } from '../ui/texts.tsx'
import { changeMotion, changePath, type MotionKey, useRefusal } from './editMotion.ts'
import { ViewHead } from './Views.tsx'

const labels: Readonly<Record<MotionKey, string>> = {
  loadN: 'grind:motion.load',
  fingerReachMm: 'grind:motion.reach',
  traverseMm: 'grind:motion.traverse',
  sweeps: 'grind:motion.sweeps',
}

const plannedPaths = ['sinusoid', 'triangle', 'threePosition'] as const

/** How the blade is moved. A change begins the grind again: its past belongs to the motion that made it. */
export const MotionFields = ({ motion }: { readonly motion: Job['motion'] }) => {
  const t = useTexts()
  return (
    <section className="grind-view motion-fields">
      <ViewHead
        heading={t('grind:motion.heading')}
        note={t('grind:motion.note')}
        end={<PathChoice motion={motion} />}
      />
      <div className="motion-row">
        {(Object.keys(labels) as MotionKey[]).map((key) => (
          <MotionField key={key} name={key} value={motion[key]} />
        ))}
      </div>
    </section>
  )
}

/** How the hand goes from side to side; what it has made itself can be chosen once it was kept. */
const PathChoice = ({ motion }: { readonly motion: Job['motion'] }) => {
  const t = useTexts()
  const offered = motion.recordedPath === null ? plannedPaths : [...plannedPaths, 'recorded' as const]
  return (
    <label>
      <span className="unseen">{t('grind:motion.path.label')}</span>
      <select
        className="word"
        value={motion.path}
        onChange={(event) => void changePath(event.target.value as Job['motion']['path'])}
      >
        {offered.map((path) => (
          <option key={path} value={path}>
            {t(`grind:motion.path.${path}`)}
          </option>
        ))}
      </select>
    </label>
  )
}

const MotionField = ({ name, value }: { readonly name: MotionKey; readonly value: number }) => {
  const t = useTexts()
  const path = `motion.${name}` as const
  return (
    <FigureField
      quantity={path}
      value={value}
      label={t(labels[name])}
      size="small"
      onCommit={(next) => next !== null && changeMotion(name, next)}
      {...useRefusal(path)}
    />
  )
}
