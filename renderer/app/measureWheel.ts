import type { Station } from '../../main/contract/entities.ts'
import { saveRecord } from '../rack/edits.ts'
import { checkJob } from './jobParts.ts'
import { useApp } from './store.ts'
import { refuse } from './storeJob.ts'

/** Where a refused diameter is shown. */
export const WHEEL_FIELD = 'station.wheelDiameterMm'

/** Keeps a wheel as measured now; the job follows its station. @returns false with the reason in `problems` */
export const measureWheel = async (station: Station, wheelDiameterMm: number): Promise<boolean> => {
  const { id, version, code: _code, ...draft } = station
  const { job } = useApp.getState()
  const checked = job && checkJob({ ...job.document, station: { ...job.document.station, wheelDiameterMm } })
  if (checked && !checked.ok) return refuse(checked.problems, WHEEL_FIELD)
  const saved = await saveRecord(
    'station',
    { id, version },
    { ...draft, wheelDiameterMm, measuredAt: new Date().toISOString() },
  )
  return saved.ok ? true : refuse(saved.problems, WHEEL_FIELD)
}
