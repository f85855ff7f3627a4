import type { FromWorker, ToWorker } from './protocol.ts'
import { type SolverPort, spawnSolver } from './spawn.ts'

/** Work under way in a worker of its own, so that nothing else waits for it. */
export interface Aside<T> {
  /** Null: it was given up, or the worker failed. */
  readonly result: Promise<T | null>
  giveUp(): void
}

/** @param heard told everything the worker says; what it answers, other than undefined, is the result and ends the work */
export const doAside = <T>(
  message: ToWorker,
  heard: (said: FromWorker) => T | undefined,
  spawn: () => SolverPort = spawnSolver,
): Aside<T> => {
  const port = spawn()
  let settle: (value: T | null) => void = () => undefined
  const result = new Promise<T | null>((answer) => {
    settle = (value) => {
      port.terminate()
      answer(value)
    }
  })
  port.onmessage = ({ data }) => {
    const value = heard(data)
    if (value !== undefined) settle(value)
  }
  port.onerror = () => settle(null)
  port.postMessage(message)
  return { result, giveUp: () => settle(null) }
}
