import { useEffect, useState } from 'react'
import type { CallInput } from '../../main/contract/calls.ts'
import type { Found } from '../../main/contract/finding.ts'
import { sayProblem, useApp } from '../app/store.ts'
import { call } from '../app/transport.ts'

/** @returns the tools asked for, read again after every change of the rack; null until they were read */
export const useTools = (asked: CallInput<'tool.find'>): Found | null => {
  const changes = useApp((app) => app.rackChanges)
  const [found, setFound] = useState<Found | null>(null)
  const wanted = JSON.stringify(asked)
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change is the trigger
  useEffect(() => {
    let still = true
    void call('tool.find', JSON.parse(wanted)).then((answer) => {
      if (!still) return
      if (answer.ok) setFound(answer.value)
      else if (answer.problems[0]) sayProblem(answer.problems[0])
    })
    return () => {
      still = false
    }
  }, [wanted, changes])
  return found
}
