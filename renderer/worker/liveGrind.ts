import type { Job } from '../../geometry/job.ts'
import { type Problem, problem } from '../../geometry/result.ts'
import type { Frame, FromWorker, HistoryRow, RunShape } from './protocol.ts'
import { type SolverPort, spawnSolver } from './spawn.ts'

/** What a listener hears of: each frame, or sweeps worked out ahead and problems. */
export type Topic = 'frame' | 'history'

/**
 * The window's end of a live grind. `latest` is replaced by every frame; its arrays belong to the worker again as soon as
 * the next frame is there, so nobody keeps them.
 */
export interface LiveGrind {
  readonly shape: RunShape | null
  readonly latest: Frame | null
  /** Relief after each sweep, as far as it is worked out. */
  readonly history: readonly HistoryRow[]
  readonly problems: readonly Problem[]
  /** @returns a function that ends the listening */
  subscribe(topic: Topic, listener: () => void): () => void
  /** Begins again with this job; an older run is superseded. @returns the run's number, as its frames carry it */
  start(job: Job): number
  play(sweepsPerSecond: number): void
  pause(): void
  /** @param step from 0 to sweeps x stepsPerSweep; the grind pauses there */
  seek(step: number): void
  close(): void
}

/** @param spawn how the worker is made; tests give a double */
export const createLiveGrind = (spawn: () => SolverPort = spawnSolver): LiveGrind => {
  const port = spawn()
  const listeners = { frame: new Set<() => void>(), history: new Set<() => void>() }
  let run = 0
  let shape: RunShape | null = null
  let latest: Frame | null = null
  let history: HistoryRow[] = []
  let problems: readonly Problem[] = []

  const giveBack = (frame: Frame): void => {
    const { vMm, pressureNPerMm } = frame
    port.postMessage({ type: 'give', vMm, pressureNPerMm }, [vMm.buffer, pressureNPerMm.buffer])
  }
  const takeFrame = (frame: Frame): void => {
    if (frame.run !== run) return
    if (latest?.run === run) giveBack(latest)
    latest = frame
  }
  const take = (message: FromWorker): void => {
    if (message.type === 'frame') takeFrame(message.frame)
    else if (message.type === 'started' && message.shape.run === run) shape = message.shape
    else if (message.type === 'history' && message.run === run) history = [...history, ...message.rows]
    else if (message.type === 'trouble' && message.run === run) problems = message.problems
    for (const listener of listeners[message.type === 'frame' ? 'frame' : 'history']) listener()
  }
  port.onmessage = ({ data }) => take(data)
  port.onerror = () => take({ type: 'trouble', run, problems: [problem('solverLost')] })

  return {
    get shape() {
      return shape
    },
    get latest() {
      return latest
    },
    get history() {
      return history
    },
    get problems() {
      return problems
    },
    subscribe: (topic, listener) => {
      listeners[topic].add(listener)
      return () => listeners[topic].delete(listener)
    },
    start: (job) => {
      run++
      history = []
      problems = []
      port.postMessage({ type: 'start', run, job })
      return run
    },
    play: (sweepsPerSecond) => port.postMessage({ type: 'play', sweepsPerSecond }),
    pause: () => port.postMessage({ type: 'pause' }),
    seek: (step) => port.postMessage({ type: 'seek', step }),
    close: () => {
      listeners.frame.clear()
      listeners.history.clear()
      port.terminate()
    },
  }
}
