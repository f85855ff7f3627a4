import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { FromWorker, ToWorker, WorkerStart } from './serviceMessages.ts'

/** Run from source the worker is beside this file; bundled, this code may lie one folder deeper than the worker. */
const workerPath = (): string => {
  const names = import.meta.url.endsWith('.ts') ? ['./worker.ts'] : ['./worker.js', '../worker.js']
  const places = names.map((name) => fileURLToPath(new URL(name, import.meta.url)))
  return places.find((place) => existsSync(place)) ?? (places[0] as string)
}

/** One running worker. `ended` comes once, when it is gone for whatever reason. */
export interface WorkerThread {
  post(message: ToWorker): void
  readonly ended: Promise<void>
}

/** Starts the service worker. @param onMessage takes everything it says */
export const startWorker = (start: WorkerStart, onMessage: (message: FromWorker) => void): WorkerThread => {
  const worker = new Worker(workerPath(), { workerData: start, execArgv: [] })
  worker.on('message', onMessage)
  worker.on(
    'error',
    (error: unknown) => void process.stderr.write(`${error instanceof Error ? error.stack : String(error)}\n`),
  )
  const ended = new Promise<void>((resolve) => worker.once('exit', () => resolve()))
  return { post: (message) => worker.postMessage(message), ended }
}
