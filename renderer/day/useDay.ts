import { useEffect, useState } from 'react'
import type { DayQueue } from '../../main/contract/day.ts'
import { sayProblem, useApp } from '../app/store.ts'
import { call } from '../app/transport.ts'

/** @returns a day's queue, read again when anything changed that it is reckoned from; null until it was read */
export const useDay = (onDay: string): DayQueue | null => {
  const { dayChanges, rackChanges, stations, fixtures } = useApp()
  const [queue, setQueue] = useState<DayQueue | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: changes are the trigger
  useEffect(() => {
    let wanted = true
    void call('queueEntry.list', { onDay }).then((listed) => {
      if (!wanted) return
      if (listed.ok) setQueue(listed.value)
      else if (listed.problems[0]) sayProblem(listed.problems[0])
    })
    return () => {
      wanted = false
    }
  }, [onDay, dayChanges, rackChanges, stations, fixtures])
  return queue
}
