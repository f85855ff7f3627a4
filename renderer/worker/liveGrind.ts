import type { Job } from '../../geometry/job.ts'
import { type Problem, problem } from '../../geometry/result.ts'
import type { Frame, FromWorker, HistoryRow, RunShape, ToWorker } from './protocol.ts'
import type { RunEvent } from './runEvents.ts'
import { type SolverPort, spawnSolver } from './spawn.ts'

/** A part of the run that was made by hand. */
export interface HandMade {
  readonly fromStep: number
  /** Where the load stood in each of its steps, -1 left to +1 right of the reach. */
  readonly path: Float64Array
}

/** What a listener hears of: each frame; or sweeps worked out ahead, events, what the hand made, and problems. */
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
  /** What happens for the first time in the run, in order, as far as it is worked out. */
  readonly events: readonly RunEvent[]
  /** What the hand had made when it last let go; null: the run is as planned. */
  readonly handMade: HandMade | null
  /** @returns a function that ends the listening */
  subscribe(topic: Topic, listener: () => void): () => void
  /** Begins again with this job; an older run is superseded. @returns the run's number, as its frames carry it */
  start(job: Job): number
  play(sweepsPerSecond: number): void
  pause(): void
  /** @param step from 0 to sweeps x stepsPerSweep; the grind pauses there */
  seek(step: number): void
  /**
   * Takes the blade in hand where the run stands, or moves the hand. While it is held the wheel grinds in the time the job
   * counts, a sweep's steps a second; what was planned from there on gives way.
   * @param share of the finger reach, -1 left to +1 right
   */
  hold(share: number): void
  /** Lets go: the grind is paused and `handMade` told. */
  release(): void
  /** Lets go as if the blade had never been taken in hand: the run is as it was, paused where it was taken. */
  giveUp(): void
  /** Grinds so many steps by hand, the load at this share of the reach, and pauses. */
  press(share: number, steps: number): void
  /** Makes steps of `handMade` again where the run stands, and pauses. */
  remake(path: Float64Array): void
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
  let events: readonly RunEvent[] = []
  let handMade: HandMade | null = null
  // What the hand had made before it took hold this time; undefined: it does not hold.
  let before: HandMade | null | undefined

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
    else if (message.type === 'history' && message.run === run)
      history = [...history.slice(0, message.from), ...message.rows]
    else if (message.type === 'events' && message.run === run) events = message.events
    else if (message.type === 'handMade' && message.run === run) handMade = message
    else if (message.type === 'trouble' && message.run === run) problems = message.problems
    for (const listener of listeners[message.type === 'frame' ? 'frame' : 'history']) listener()
  }
  /** Whatever is asked for, a hand that holds lets go. */
  const letGo = (message: ToWorker): void => {
    before = undefined
    port.postMessage(message)
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
    get events() {
      return events
    },
    get handMade() {
      return handMade
    },
    subscribe: (topic, listener) => {
      listeners[topic].add(listener)
      return () => listeners[topic].delete(listener)
    },
    start: (job) => {
      run++
      history = []
      problems = []
      events = []
      handMade = null
      letGo({ type: 'start', run, job })
      return run
    },
    play: (sweepsPerSecond) => letGo({ type: 'play', sweepsPerSecond }),
    pause: () => letGo({ type: 'pause' }),
    seek: (step) => letGo({ type: 'seek', step }),
    hold: (share) => {
      if (before === undefined) before = handMade
      port.postMessage({ type: 'hold', share })
    },
    release: () => letGo({ type: 'release' }),
    giveUp: () => {
      if (before === undefined) return
      handMade = before
      letGo({ type: 'giveUp' })
    },
    press: (share, steps) => port.postMessage({ type: 'press', share, steps }),
    remake: (path) => port.postMessage({ type: 'remake', path }),
    close: () => {
      listeners.frame.clear()
      listeners.history.clear()
      port.terminate()
    },
  }
}
