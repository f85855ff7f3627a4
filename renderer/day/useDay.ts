import type { DayQueue } from '../../main/contract/day.ts'
import { useApp } from '../app/store.ts'
import { useAnswer } from '../app/useAnswer.ts'

/** @returns a day's queue, read again when anything changed that it is reckoned from; null until it was read */
export const useDay = (onDay: string): DayQueue | null => {
  const { dayChanges, rackChanges, stations, fixtures } = useApp()
  return useAnswer('queueEntry.list', { onDay }, [dayChanges, rackChanges, stations, fixtures]) ?? null
}
