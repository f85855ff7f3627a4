import { signaturesOf } from '../../geometry/diagnose.ts'
import { findingsOf } from '../../geometry/lesson/findings.ts'
import { planSchedule } from '../../geometry/schedule.ts'
import { answerJob, solveJob } from '../../geometry/solveJob.ts'
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

/** The answer first: a field that was changed is answered while the rest is worked out. */
const solve = ({ id, job }: Extract<ToWorker, { type: 'solve' }>): void => {
  const answer = answerJob(job)
  if (answer.ok) post({ type: 'answered', id, answer: answer.value })
  post({ type: 'solved', id, result: solveJob(job) })
}

/** A schedule that nobody waits for any more ends with its worker. */
const schedule = ({ job, curve }: Extract<ToWorker, { type: 'schedule' }>): void => {
  const told = (share: number) => post({ type: 'scheduling', share })
  post({ type: 'scheduled', result: planSchedule(job, curve, { mostSettings: 3 }, told, () => false) })
}

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  if (data.type === 'solve') solve(data)
  else if (data.type === 'schedule') schedule(data)
  else if (data.type === 'diagnose') post({ type: 'diagnosed', signatures: signaturesOf(data.job) })
  else if (data.type === 'teach')
    post({ type: 'taught', result: findingsOf(data.lesson, data.step, data.moved, data.seed) })
  else loop.take(data)
}
