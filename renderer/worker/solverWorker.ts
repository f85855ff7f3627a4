import { solveJob } from '../../geometry/solveJob.ts'
import { createGrindLoop } from './grindLoop.ts'
import type { FromWorker, ToWorker } from './protocol.ts'

/** Entry of the worker: solves whole jobs, and keeps one grind alive. */
const post = (message: FromWorker, transfer: Transferable[] = []): void => self.postMessage(message, { transfer })

const loop = createGrindLoop({
  post,
  nowMs: () => performance.now(),
  /** Through the event loop, so that a waiting message is read before the next slice. */
  after: (ms, work) => setTimeout(work, ms),
})

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  if (data.type === 'solve') post({ type: 'solved', id: data.id, result: solveJob(data.job) })
  else loop.take(data)
}
