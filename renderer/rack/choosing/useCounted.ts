import { useEffect } from 'react'
import { useApp } from '../../app/store.ts'
import { call } from '../../app/transport.ts'
import { foundInAll, type Question } from './chosen.ts'

/** Counts all that are chosen by what finds them, and again after every change of the rack: the list itself counts only so far. */
export const useCounted = (all: Question | null): void => {
  const changes = useApp((app) => app.rackChanges)
  const asked = all && JSON.stringify({ search: all.search, filter: all.filter })
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change of the rack is a trigger too
  useEffect(() => {
    if (asked === null) return
    let wanted = true
    void call('tools.look', { which: JSON.parse(asked) as Question, set: {} }).then((looked) => {
      if (wanted && looked.ok) foundInAll(looked.value.tools)
    })
    return () => {
      wanted = false
    }
  }, [asked, changes])
}
