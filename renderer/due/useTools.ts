import type { CallInput } from '../../main/contract/calls.ts'
import type { Found } from '../../main/contract/finding.ts'
import { useApp } from '../app/store.ts'
import { useAnswer } from '../app/useAnswer.ts'

/** @returns the tools asked for, read again after every change of the rack; null until they were read */
export const useTools = (asked: CallInput<'tool.find'>): Found | null => {
  const changes = useApp((app) => app.rackChanges)
  return useAnswer('tool.find', asked, [changes]) ?? null
}
