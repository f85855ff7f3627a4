import { useRef, useState } from 'react'
import { handOverBlob } from '../app/handOver.ts'
import { sayProblem } from '../app/store.ts'
import { transport } from '../app/transport.ts'

/** What a day can be put on: all on one sheet, or a job card each. */
export type Paper = 'sheet' | 'cards'

/** Puts a day on paper and lets it be kept. */
export const usePaper = (onDay: string) => {
  const [busy, setBusy] = useState(false)
  const callId = useRef('')
  const make = async (paper: Paper): Promise<void> => {
    callId.current = crypto.randomUUID()
    setBusy(true)
    const made = await transport.call(`queueEntry.${paper}`, { onDay }, callId.current)
    setBusy(false)
    if (!made.ok) return made.problems[0] && sayProblem(made.problems[0])
    const without = 'without' in made.value ? made.value.without : []
    handOverBlob(made.value, without.length > 0 ? 'day:madeWithout' : 'day:made', { codes: without.join(', ') })
  }
  return { busy, make, stop: () => transport.cancel(callId.current) }
}
