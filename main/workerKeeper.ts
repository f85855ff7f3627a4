import { type Problem, problem } from '../geometry/result.ts'
import type { HostEvent } from './contract/events.ts'
import type { FromWorker, ToWorker } from './serviceMessages.ts'
import type { WorkerThread } from './workerThread.ts'

/** A lost worker is replaced this often unasked; one that dies twice would die again, so the next is made when something is asked. */
const REPLACEMENTS = 1

/** Keeps one service worker running, and pairs what it answers with what was asked. */
export interface WorkerKeeper {
  /** Starts the worker. @returns once it is ready, has refused, or is lost for good */
  begin(): Promise<void>
  /** Why nothing can be asked; empty when all is well. */
  problems(): readonly Problem[]
  /**
   * A worker that was lost for good is made anew first.
   * @returns the reply to a request with a ticket, or null where the worker was lost before it answered
   */
  ask(request: (ticket: number) => ToWorker): Promise<FromWorker | null>
  tell(message: ToWorker): void
  close(): Promise<void>
}

/** Requests that wait for their reply. */
const createWaiting = () => {
  const waiting = new Map<number, (reply: FromWorker | null) => void>()
  let tickets = 0
  return {
    add: (settle: (reply: FromWorker | null) => void): number => {
      tickets += 1
      waiting.set(tickets, settle)
      return tickets
    },
    settle: (ticket: number, reply: FromWorker): void => {
      waiting.get(ticket)?.(reply)
      waiting.delete(ticket)
    },
    lose: (): void => {
      for (const settle of waiting.values()) settle(null)
      waiting.clear()
    },
  }
}

/** Starts a worker that says all it says to `onMessage`. */
type StartWorker = (onMessage: (message: FromWorker) => void) => WorkerThread

/** @param emit takes every event the worker sends */
export const createWorkerKeeper = (start: StartWorker, emit: (event: HostEvent) => void): WorkerKeeper => {
  const waiting = createWaiting()
  let worker: WorkerThread | null = null
  let problems: readonly Problem[] = []
  let replacements = 0
  let isClosing = false

  const take = (message: FromWorker): void => {
    if (message.type === 'event') emit(message.event)
    if (message.type === 'refused') problems = message.problems
    if ('ticket' in message) waiting.settle(message.ticket, message)
  }

  /** A worker that refused has said why; one that was lost is replaced, or the loss itself is the problem. */
  const afterEnd = async (): Promise<void> => {
    worker = null
    waiting.lose()
    if (isClosing || problems.length > 0) return
    if (replacements >= REPLACEMENTS) {
      problems = [problem('serviceLost')]
      return
    }
    replacements += 1
    await begin()
  }

  const begin = (): Promise<void> =>
    new Promise((resolve) => {
      const started = start((message) => {
        take(message)
        if (message.type === 'ready' || message.type === 'refused') resolve()
      })
      worker = started
      void started.ended.then(afterEnd).then(resolve)
    })

  /** What is asked while it is being made waits in its line. */
  const beginAgain = (): void => {
    problems = []
    void begin()
  }
  const isLost = (): boolean => worker === null && !isClosing && problems.some(({ code }) => code === 'serviceLost')

  return {
    begin,
    problems: () => problems,
    ask: (request) =>
      new Promise((resolve) => {
        if (isLost()) beginAgain()
        if (worker === null) return resolve(null)
        worker.post(request(waiting.add(resolve)))
      }),
    tell: (message) => worker?.post(message),
    close: async () => {
      isClosing = true
      const last = worker
      last?.post({ type: 'close' })
      await last?.ended
    },
  }
}
