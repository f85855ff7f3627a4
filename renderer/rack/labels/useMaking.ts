import { useRef, useState } from 'react'
import type { Problem } from '../../../geometry/result.ts'
import type { LabelSheet } from '../../../main/contract/labelSheets.ts'
import type { LabelItem } from '../../../main/contract/labels.ts'
import { handOverBlob } from '../../app/handOver.ts'
import { transport } from '../../app/transport.ts'
import { nextFirst, startAt } from './useLabels.ts'

/** Makes labels and lets them be kept; the sheet's next free position is remembered, except after a trial. */
export const useMaking = (onMade: () => void) => {
  const [busy, setBusy] = useState(false)
  const [problems, setProblems] = useState<readonly Problem[]>([])
  const callId = useRef('')
  const make = async (items: LabelItem[], sheet: LabelSheet, first: number, outlines: boolean): Promise<void> => {
    callId.current = crypto.randomUUID()
    setBusy(true)
    setProblems([])
    const made = await transport.call('label.make', { items, sheet, first, outlines }, callId.current)
    setBusy(false)
    if (!made.ok) return setProblems(made.problems)
    handOverBlob(made.value, 'labels:made')
    if (!outlines) startAt(nextFirst(sheet, first, items.length))
    onMade()
  }
  return { busy, problems, make, stop: () => transport.cancel(callId.current) }
}
