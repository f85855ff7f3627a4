import { useEffect, useState } from 'react'
import type { Dressing } from '../../../main/contract/work.ts'
import { useApp } from '../../app/store.ts'
import { call } from '../../app/transport.ts'

/** @returns a wheel's log, newest first, read again when some of it changed; null until it was read */
export const useDressings = (stationId: string): readonly Dressing[] | null => {
  const changes = useApp((app) => app.dressingChanges)
  const [dressings, setDressings] = useState<readonly Dressing[] | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change is the trigger
  useEffect(() => {
    let wanted = true
    void call('dressing.list', { stationId }).then((listed) => {
      if (wanted && listed.ok) setDressings(listed.value)
    })
    return () => {
      wanted = false
    }
  }, [stationId, changes])
  return dressings
}
