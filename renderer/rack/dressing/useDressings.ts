import type { Dressing } from '../../../main/contract/work.ts'
import { useApp } from '../../app/store.ts'
import { useAnswer } from '../../app/useAnswer.ts'

/** @returns a wheel's log, newest first; null until it was read */
export const useDressings = (stationId: string): readonly Dressing[] | null => {
  const changes = useApp((app) => app.dressingChanges)
  return useAnswer('dressing.list', { stationId }, [changes]) ?? null
}
