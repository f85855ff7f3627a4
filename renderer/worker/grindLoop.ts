import type { Job } from '../../geometry/job.ts'
import { advanceScout, rowOf, shapeOf, startRun } from './grindRun.ts'
import { handPathOf } from './handRun.ts'
import { followGoal, frameOf, type Live, liveOf, moveGoal, obey, restOf } from './playhead.ts'
import type { FromWorker, ToWorker } from './protocol.ts'

/** Longest slice of work between two looks at the messages (ms): well under a frame, so a newer request waits unnoticed. */
const SLICE_MS = 8
interface Surroundings {
  post(message: FromWorker, transfer?: Transferable[]): void
  nowMs(): number
  after(ms: number, work: () => void): void
}

/** Takes the messages of a live grind and works through it in slices. */
export interface GrindLoop {
  take(message: Exclude<ToWorker, { type: 'solve' | 'schedule' | 'diagnose' }>): void
}

/** @param around the worker's clock, timer and way out; tests give their own */
export const createGrindLoop = (around: Surroundings): GrindLoop => {
  let live: Live | null = null
  let scheduled = false

  const schedule = (ms: number): void => {
    if (scheduled) return
    scheduled = true
    around.after(ms, () => {
      scheduled = false
      if (live) slice(live)
    })
  }
  const sendFrame = (now: Live): void => {
    const arrays = now.spare.pop()
    if (!arrays) return
    now.stale = false
    around.post({ type: 'frame', frame: frameOf(now, arrays) }, [arrays.vMm.buffer, arrays.pressureNPerMm.buffer])
  }
  const sendEvents = (now: Live): void => {
    const { events } = now.run
    if (events.length === now.eventsSent) return
    now.eventsSent = events.length
    around.post({ type: 'events', run: now.number, events: [...events] })
  }
  const sendOvertaken = (now: Live): void => {
    now.overtaken = false
    now.troubleSent = false
    around.post({ type: 'history', run: now.number, from: now.historySent, rows: [] })
    around.post({ type: 'trouble', run: now.number, problems: [] })
    sendEvents(now)
  }
  const scoutAhead = (now: Live, outOfTime: () => boolean): void => {
    const rows = advanceScout(now.run, outOfTime)
    if (rows.length > 0) around.post({ type: 'history', run: now.number, from: now.historySent, rows })
    now.historySent += rows.length
    sendEvents(now)
    if (!now.run.trouble || now.troubleSent) return
    now.troubleSent = true
    around.post({ type: 'trouble', run: now.number, problems: now.run.trouble })
  }
  const sendHandMade = (now: Live): void => {
    const { run, number } = now
    now.handUntold = false
    const path = handPathOf(run)
    around.post({ type: 'handMade', run: number, fromStep: run.handFromStep ?? run.lastStep, path }, [path.buffer])
  }
  const slice = (now: Live): void => {
    const startMs = around.nowMs()
    const outOfTime = () => around.nowMs() - startMs >= SLICE_MS
    if (now.overtaken) sendOvertaken(now)
    moveGoal(now, startMs)
    followGoal(now, outOfTime)
    if (now.handUntold && !now.hand) sendHandMade(now)
    if (now.stale && now.run.head.step >= now.goal) sendFrame(now)
    if (!outOfTime()) scoutAhead(now, outOfTime)
    const restMs = restOf(now)
    if (restMs !== null) schedule(restMs)
  }
  const start = (number: number, job: Job): void => {
    const run = startRun(job)
    live = run.ok ? liveOf(number, run.value) : null
    if (!run.ok) {
      around.post({ type: 'trouble', run: number, problems: run.problems })
      return
    }
    around.post({ type: 'started', shape: shapeOf(run.value, number) })
    around.post({ type: 'history', run: number, from: 0, rows: [rowOf(run.value.scout)] })
    if (live) live.historySent = 1
  }
  return {
    take: (message) => {
      if (message.type === 'start') start(message.run, message.job)
      else if (live) obey(live, message, around.nowMs())
      schedule(0)
    },
  }
}
