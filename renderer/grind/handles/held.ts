import type { TFunction } from 'i18next'
import type { Job } from '../../../geometry/job.ts'
import { setUpOf, setUpReport } from '../../../geometry/setUp.ts'
import { degFromRad } from '../../../geometry/units.ts'
import { type BarMeasure, barDistanceOf } from '../../../main/contract/barMeasure.ts'
import { withFound } from '../../setUp/found.ts'
import type { Figures } from '../../ui/useFigure.ts'

/**
 * The job with bar or projection moved at the machine: what is moved and the other of the two stay where the hand puts
 * them, so both are given from then on and the bevel follows, whichever was found before.
 */
const withMoved = (job: Job, moved: { readonly barDistanceMm?: number; readonly projectionMm?: number }): Job => {
  const setUp = setUpOf(job)
  if (!setUp.ok) return job
  const held = withFound(job, setUpReport(job, setUp.value), 'bevelAngleDeg')
  return { ...held, aim: { ...held.aim, ...moved } }
}

/** @param readMm where the bar stands, as the station measures it */
export const withBar = (job: Job, measure: BarMeasure, readMm: number): Job =>
  withMoved(job, { barDistanceMm: barDistanceOf(measure, job.station, readMm) })

export const withProjection = (job: Job, projectionMm: number): Job => withMoved(job, { projectionMm })

/** The job with its bar this far towards the operator from straight above the axle, as far from the axle as before. */
export const withOffset = (job: Job, barOffsetMm: number): Job => ({
  ...job,
  station: { ...job.station, barOffsetMm },
})

/** The bevel that follows, in words; where no triangle closes there is none to tell. */
export const bevelInWords = (job: Job, t: TFunction, figures: Figures): string => {
  const setUp = setUpOf(job)
  return setUp.ok
    ? t('handles:follows.bevel', { bevel: figures.inWords(degFromRad(setUp.value.bevelRad), 'deg', 1) })
    : ''
}
