import { Worker } from 'node:worker_threads'
import { createReports } from './reports/reports.ts'
import type { FromWorker, ToWorker, WorkerStart } from './serviceMessages.ts'
import { threadPath } from './threadPath.ts'

/** One running worker. `ended` comes once, when it is gone for whatever reason. */
export interface WorkerThread {
  post(message: ToWorker): void
  readonly ended: Promise<void>
}

/** Starts the service worker. @param onMessage takes everything it says */
export const startWorker = (start: WorkerStart, onMessage: (message: FromWorker) => void): WorkerThread => {
  const worker = new Worker(threadPath('worker'), { workerData: start, execArgv: [] })
  worker.on('message', onMessage)
  worker.on('error', (error: unknown) => {
    process.stderr.write(`${error instanceof Error ? error.stack : String(error)}\n`)
    createReports(start.dataDir, () => new Date()).note({ part: 'service', error })
  })
  const ended = new Promise<void>((resolve) => worker.once('exit', () => resolve()))
  return { post: (message) => worker.postMessage(message), ended }
}
