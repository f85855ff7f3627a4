import type { Job } from '../../../geometry/job.ts'
import { quantities } from '../../../geometry/quantities.ts'
import type { SetUp } from '../../../geometry/setUp.ts'
import { measureOf } from '../../../main/contract/barMeasure.ts'
import { JobField } from '../../app/JobField.tsx'
import { useApp } from '../../app/store.ts'
import { useTexts } from '../../ui/texts.tsx'
import { withBar, withProjection } from './held.ts'

interface FieldProps {
  readonly job: Job
  readonly setUp: SetUp
}

/** Where the bar stands, to be typed; the projection stays and the bevel follows, as when the bar is moved by hand. */
export const BarField = ({ job, setUp }: FieldProps) => {
  const t = useTexts()
  const measure = useApp((app) => app.station?.barMeasure ?? 'gap')
  const place = useApp((app) => app.station?.barPlace ?? 'above')
  const name = t(`setUp:bar.given.${place}.${measure}`)
  return (
    <JobField
      path="aim.barDistanceMm"
      label={name}
      value={measureOf(measure, job.station, setUp.barDistanceMm)}
      range={{ min: 0, max: measureOf(measure, job.station, quantities.aim.barDistanceMm.max) }}
      note={measure === 'gap' ? t('grind:label.gap') : name}
      change={(now, mm) => (mm === null ? now : withBar(now, measure, mm))}
    />
  )
}

/** The projection, to be typed; the bar stays and the bevel follows. */
export const ProjectionField = ({ setUp }: FieldProps) => {
  const t = useTexts()
  return (
    <JobField
      path="aim.projectionMm"
      label={t('quantities:aim.projectionMm.name')}
      value={setUp.projectionMm}
      note={t('grind:label.projection')}
      change={(now, mm) => (mm === null ? now : withProjection(now, mm))}
    />
  )
}
