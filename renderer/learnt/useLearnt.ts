import { useEffect, useState } from 'react'
import type { CallOutput } from '../../main/contract/calls.ts'
import type { Learnt } from '../../main/contract/learnt.ts'
import { useApp } from '../app/store.ts'
import { call } from '../app/transport.ts'

/** What the bench log teaches of the fixture and the station in hand; null until it is there. */
export interface Lessons {
  readonly learnt: Learnt | null
  readonly removal: CallOutput<'station.removal'>
}

/** @returns what was learnt, read again after every change */
export const useLearnt = (fixtureId: string | null, stationId: string | null): Lessons => {
  const [lessons, setLessons] = useState<Lessons>({ learnt: null, removal: null })
  const logChanges = useApp((app) => app.logChanges)
  const tools = useApp((app) => app.tools)
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change of the log, or of an iron it names, is the trigger
  useEffect(() => {
    let wanted = true
    const read = async () => {
      const learnt = fixtureId === null ? null : await call('fixture.learnt', { id: fixtureId })
      const removal = stationId === null ? null : await call('station.removal', { id: stationId })
      if (!wanted) return
      setLessons({ learnt: learnt?.ok ? learnt.value : null, removal: removal?.ok ? removal.value : null })
    }
    void read()
    return () => {
      wanted = false
    }
  }, [fixtureId, stationId, logChanges, tools])
  return lessons
}
