import type { Job } from '../../geometry/job.ts'
import { useApp } from '../app/store.ts'
import { useReadings } from '../measure/useReadings.ts'
import { useTexts } from '../ui/texts.tsx'
import { keptAt } from './ground.ts'
import { takeEarlier, useSquare } from './setting.ts'

interface EarlierProps {
  readonly job: Job
  readonly place: string
  readonly toolId: string
}

/** Offers what the bench log keeps of this iron, ground at this place and tried with a square. */
export const Earlier = ({ job, place, toolId }: EarlierProps) => {
  const t = useTexts()
  const lines = useReadings(toolId)
  const { readings } = useSquare(place)
  const record = useApp((app) => app.job)
  const bevelDeg = useApp((app) => app.tool?.bevelAngleDeg ?? app.report?.setUp.bevelAngleDeg ?? null)
  if (!lines || !record || bevelDeg === null) return null
  const taken = readings.map(({ logId }) => logId)
  const kept = keptAt(lines, record, job, bevelDeg, taken)
  if (kept.length === 0) return null
  return (
    <p>
      {t('square:earlier.kept', { count: kept.length })}{' '}
      <button type="button" className="word" onClick={() => takeEarlier(place, kept)}>
        {t('square:earlier.take', { count: kept.length })}
      </button>
    </p>
  )
}
