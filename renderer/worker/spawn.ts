import type { FromWorker, ToWorker } from './protocol.ts'

/** The part of a worker that its clients use; tests give a double. */
export interface SolverPort {
  postMessage(message: ToWorker, transfer?: Transferable[]): void
  onmessage: ((event: MessageEvent<FromWorker>) => void) | null
  onerror: ((event: ErrorEvent) => void) | null
  terminate(): void
}

/** A fresh solver worker. The literal form is what the bundler looks for. */
export const spawnSolver = (): SolverPort =>
  new Worker(new URL('./solverWorker.ts', import.meta.url), { type: 'module' })
