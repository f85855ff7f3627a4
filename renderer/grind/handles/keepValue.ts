import { checkJob } from '../../app/jobParts.ts'
import { useApp } from '../../app/store.ts'
import { refuse } from '../../app/storeJob.ts'
import { saveRecord } from '../../rack/edits.ts'
import { editJobAt } from '../editMotion.ts'
import { withOffset } from './held.ts'
import type { HandleKind } from './kind.ts'

const AT = 'station.barOffsetMm'

/** Keeps where the bar stands with its station; the job follows. @returns false with the reason in `problems` */
const keepOffset = async (barOffsetMm: number): Promise<boolean> => {
  const { job, station } = useApp.getState()
  if (!job || !station) return false
  const checked = checkJob(withOffset(job.document, barOffsetMm))
  if (!checked.ok) return refuse(checked.problems, AT)
  const { id, version, code: _code, ...draft } = station
  const saved = await saveRecord('station', { id, version }, { ...draft, barOffsetMm })
  return saved.ok ? true : refuse(saved.problems, AT)
}

/** Keeps what a handle has been moved to: one change, one undo. @returns false where it was not taken; the handle's field says why */
export const keepValue = ({ id, path, change }: HandleKind, value: number): Promise<boolean> =>
  id === 'barOffset' ? keepOffset(value) : editJobAt(path, (job) => change(job, value))
