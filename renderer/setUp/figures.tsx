import type { Job } from '../../geometry/job.ts'
import { quantities } from '../../geometry/quantities.ts'
import { type BarMeasure, barDistanceOf, measureOf } from '../../main/contract/barMeasure.ts'
import { JobField, useProblemAt } from '../app/JobField.tsx'
import { measureWheel, WHEEL_FIELD } from '../app/measureWheel.ts'
import { useApp } from '../app/store.ts'
import { forgetRefused } from '../app/storeJob.ts'
import { shortDate } from '../ui/dates.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { FigureText } from '../ui/FigureText.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { type AimKey, foundKeyOf } from './found.ts'
import type { Standing } from './SetUpScreen.tsx'
import { useTurns } from './useTurns.ts'

interface FigureProps {
  readonly standing: Standing
}

const withAim = (job: Job, key: AimKey, value: number | null): Job => ({
  ...job,
  aim: { ...job.aim, [key]: value ?? job.aim[key] },
})

/** Where the bar stands, as it is measured at this station; and another way of measuring the same. */
export const BarFigure = ({ standing: { job, figures } }: FigureProps) => {
  const t = useTexts()
  const { plain, inWords } = useFigures()
  const turns = useTurns('setUp:turns')
  const station = useApp((app) => app.station)
  const measure = station?.barMeasure ?? 'gap'
  const place = station?.barPlace ?? 'above'
  const readMm = (each: BarMeasure) => measureOf(each, job.station, figures.barDistanceMm)
  const { max } = quantities.aim.barDistanceMm
  const found = foundKeyOf(job) === 'barDistanceMm'
  const note = turns(figures.bevelPerBarDistanceDegPerMm)
  const other = measure === 'gap' ? 'heightToTop' : 'gap'
  return (
    <>
      {found ? (
        <FigureText
          figure={plain(readMm(measure), 'mm', 1)}
          size="far"
          found
          name={<strong>{t(`setUp:bar.found.${place}.${measure}`)}</strong>}
          note={note}
        />
      ) : (
        <JobField
          path="aim.barDistanceMm"
          size="large"
          label={t(`setUp:bar.given.${place}.${measure}`)}
          value={readMm(measure)}
          range={{ min: 0, max: measureOf(measure, job.station, max) }}
          note={note}
          change={(now, value) =>
            withAim(now, 'barDistanceMm', value === null ? null : barDistanceOf(measure, now.station, value))
          }
        />
      )}
      <p className="beside-note">
        {t(`setUp:bar.other.${place}.${other}`)} <strong>{inWords(readMm(other), 'mm', 1)}</strong>
      </p>
    </>
  )
}

/** Bar's axis to edge, along the back. */
export const ProjectionFigure = ({ standing: { job, figures } }: FigureProps) => {
  const t = useTexts()
  const { plain } = useFigures()
  const note = useTurns('setUp:turns')(figures.bevelPerProjectionDegPerMm)
  if (foundKeyOf(job) === 'projectionMm') {
    const name = <strong>{t('setUp:projection.found')}</strong>
    return <FigureText figure={plain(figures.projectionMm, 'mm', 1)} size="far" found name={name} note={note} />
  }
  return (
    <JobField
      path="aim.projectionMm"
      size="large"
      label={t('setUp:projection.given')}
      value={job.aim.projectionMm}
      note={note}
      change={(now, value) => withAim(now, 'projectionMm', value)}
    />
  )
}

/** The bevel at the very tip, and what a flat stone finds. */
export const BevelFigure = ({ standing: { job, figures, hollow } }: FigureProps) => {
  const t = useTexts()
  const { plain, inWords } = useFigures()
  const note = t('setUp:bevel.hollow', {
    depth: inWords(hollow.depthMm, 'mm', 2),
    chord: inWords(hollow.chordAngleDeg, 'deg', 1),
  })
  if (foundKeyOf(job) === 'bevelAngleDeg') {
    const name = <strong>{t('setUp:bevel.found')}</strong>
    return <FigureText figure={plain(figures.bevelAngleDeg, 'deg', 1)} size="far" found name={name} note={note} />
  }
  return (
    <JobField
      path="aim.bevelAngleDeg"
      size="large"
      label={t('setUp:bevel.given')}
      value={job.aim.bevelAngleDeg}
      note={note}
      change={(now, value) => withAim(now, 'bevelAngleDeg', value)}
    />
  )
}

/** The wheel as measured: typed here, it is kept with its station and today's date. */
export const WheelFigure = () => {
  const t = useTexts()
  const station = useApp((app) => app.station)
  const problem = useProblemAt(WHEEL_FIELD)
  if (!station) return null
  return (
    <FigureField
      quantity="station.wheelDiameterMm"
      size="large"
      label={t('setUp:wheel.measured', { date: shortDate(station.measuredAt) })}
      value={station.wheelDiameterMm}
      problem={problem}
      onRestore={forgetRefused}
      onCommit={(value) => value !== null && measureWheel(station, value)}
    />
  )
}
