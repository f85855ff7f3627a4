import { useRef, useState } from 'react'
import { withProgress } from './progress.ts'
import { transport } from './transport.ts'

/** A call that takes a while. */
interface Task {
  /** How far it is, from 0 to 1; null: nothing is being done. */
  readonly done: number | null
  /** @param work makes the call by the id given. @returns what it answers; the problem `cancelled` where it was stopped */
  run<T>(work: (callId: string) => Promise<T>): Promise<T>
  stop(): void
}

/** One call at a time, with how far it is and the way to stop it. */
export const useTask = (): Task => {
  const [done, setDone] = useState<number | null>(null)
  const callId = useRef('')
  const run: Task['run'] = async (work) => {
    const id = crypto.randomUUID()
    callId.current = id
    setDone(0)
    const answer = await withProgress(id, setDone, () => work(id))
    setDone(null)
    return answer
  }
  return { done, run, stop: () => transport.cancel(callId.current) }
}
