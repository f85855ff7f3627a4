import { useEffect, useState } from 'react'
import type { BenchLog } from '../../main/contract/entities.ts'
import { useApp } from '../app/store.ts'
import { call } from '../app/transport.ts'

const none: readonly BenchLog[] = []

/** @returns the readings of a tool, newest first, read again after every change; null until they are there */
export const useReadings = (toolId: string): readonly BenchLog[] | null => {
  const [read, setRead] = useState<{ readonly toolId: string; readonly lines: readonly BenchLog[] } | null>(null)
  const logChanges = useApp((app) => app.logChanges)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the change of the log is the trigger
  useEffect(() => {
    let wanted = true
    void call('benchLog.list', { toolId }).then((listed) => {
      if (wanted) setRead({ toolId, lines: listed.ok ? listed.value : none })
    })
    return () => {
      wanted = false
    }
  }, [toolId, logChanges])
  return read?.toolId === toolId ? read.lines : null
}
