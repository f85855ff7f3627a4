import type { Job } from '../../geometry/job.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { degFromRad } from '../../geometry/units.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'

interface WornProps {
  readonly job: Job
  readonly gapMm: number
  readonly barDistanceMm: number
}

/** How much a wheel loses before somebody looks at the bar again (mm of diameter). */
const WEAR_MM = 10

/** What the bevel becomes on a worn wheel, with the bar left alone and with the bar set to its old gap. */
export const Worn = ({ job, gapMm, barDistanceMm }: WornProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const wheelDiameterMm = job.station.wheelDiameterMm - WEAR_MM
  const station = { ...job.station, wheelDiameterMm }
  const projectionMm = job.aim.projectionMm ?? projectionOf(job)
  const bevelAt = (barMm: number): string => {
    const aim = { ...job.aim, bevelAngleDeg: null, projectionMm, barDistanceMm: barMm }
    const worn = setUpOf({ ...job, station, aim })
    return worn.ok ? inWords(degFromRad(worn.value.bevelRad), 'deg', 1) : t('setUp:worn.none')
  }
  return (
    <div className="worn">
      <p className="worn-head">{t('setUp:worn.heading', { diameter: inWords(wheelDiameterMm, 'mm', 0) })}</p>
      <p>
        {t('setUp:worn.left')} <strong>{bevelAt(barDistanceMm)}</strong>
      </p>
      <p>
        {t('setUp:worn.sameGap')}{' '}
        <strong>{bevelAt(wheelDiameterMm / 2 + job.station.barDiameterMm / 2 + gapMm)}</strong>
      </p>
    </div>
  )
}

const projectionOf = (job: Job): number | null => {
  const setUp = setUpOf(job)
  return setUp.ok ? setUp.value.projectionMm : null
}
