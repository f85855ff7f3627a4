import { startTransition, useCallback, useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react'
import type { Job } from '../../geometry/job.ts'
import type { Problem } from '../../geometry/result.ts'
import { type SetUp, setUpOf } from '../../geometry/setUp.ts'
import { bringBack, type RunStanding, standingOf } from '../worker/bringBack.ts'
import { createLiveGrind, type LiveGrind } from '../worker/liveGrind.ts'
import type { Frame, FrameArrays, RunShape } from '../worker/protocol.ts'
import { spawnSolver } from '../worker/spawn.ts'
import { watch } from '../worker/watch.ts'
import { highest, touchingColumns } from './touching.ts'

/** A run that has shown its first moment, with the very job it grinds. */
export interface Running {
  readonly job: Job
  readonly setUp: SetUp
  readonly shape: RunShape
  readonly live: LiveGrind
}

/** The screen's own grind worker, there as long as the screen is, and how it is made anew. */
const useGrindWorker = () => {
  const [live, setLive] = useState<LiveGrind | null>(null)
  const [count, setCount] = useState(0)
  // biome-ignore lint/correctness/useExhaustiveDependencies: count grows when the worker is to be another
  useEffect(() => {
    const fresh = createLiveGrind(() => watch(spawnSolver()))
    setLive(fresh)
    return () => fresh.close()
  }, [count])
  const renew = useCallback(() => setCount((before) => before + 1), [])
  return { live, renew }
}

/** The first of several equal jobs: a record that was read again and says the same begins nothing. */
const useSame = (job: Job | null): Job | null => {
  const text = JSON.stringify(job)
  return useMemo(() => JSON.parse(text), [text])
}

interface LiveGrindOfScreen {
  readonly live: LiveGrind | null
  readonly running: Running | null
  readonly startAgain: () => void
  /** Replaces a worker that was lost; the job comes back to the moment where it stood. */
  readonly recover: () => void
}

/**
 * Grinds the job, and begins again whenever the job changes. The run before stays in the picture until the new one has
 * its first moment, and for good where the new job cannot be ground: the last good figures stand.
 */
export const useLiveGrind = (given: Job | null): LiveGrindOfScreen => {
  const { live, renew } = useGrindWorker()
  const job = useSame(given)
  const [running, setRunning] = useState<Running | null>(null)
  const [startCount, setStartCount] = useState(0)
  const lost = useRef<{ readonly job: Job; readonly standing: RunStanding } | null>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: startCount grows when the same job is to begin again
  useEffect(() => {
    if (!live || !job) return
    const setUp = setUpOf(job)
    if (!setUp.ok) return
    const run = live.start(job)
    if (lost.current?.job === job) bringBack(live, run, lost.current.standing)
    lost.current = null
    const begin = (): void => {
      const { shape, latest } = live
      if (shape?.run !== run || latest?.run !== run) return
      // A whole screen comes with it: it is made between other things, not in one go.
      startTransition(() =>
        setRunning((now) =>
          now?.live === live && now.shape.run === run ? now : { job, setUp: setUp.value, shape, live },
        ),
      )
    }
    return live.subscribe('frame', begin)
  }, [live, job, startCount])
  const startAgain = useCallback(() => setStartCount((count) => count + 1), [])
  const recover = useCallback(() => {
    lost.current = live && job && { job, standing: standingOf(live) }
    renew()
  }, [live, job, renew])
  return { live, running, startAgain, recover }
}

/** Figures on the screen are renewed this often while the grind plays (ms): as fast as they can be read. */
export const FIGURES_MS = 160

/** A moment in figures: a frame without its arrays, which are the worker's again by the time it is read. */
export interface Moment extends Omit<Frame, keyof FrameArrays> {
  /** Width of the edge that touches. */
  readonly touchingMm: number
  readonly mostPressureNPerMm: number
}

const momentOf = (frame: Frame, { uMm }: RunShape): Moment => {
  const { vMm: _field, pressureNPerMm, ...figures } = frame
  const touching = touchingColumns(pressureNPerMm)
  return {
    ...figures,
    touchingMm: touching ? (uMm[touching[1]] as number) - (uMm[touching[0]] as number) : 0,
    mostPressureNPerMm: highest(pressureNPerMm),
  }
}

/** What is read of the frames of a run, for figures; paused it is exact. @param read the same function every time */
export const useReading = <T>({ live, shape }: Running, read: (frame: Frame, shape: RunShape) => T): T => {
  const [reading, setReading] = useState<T>(() => read(live.latest as Frame, shape))
  const shownMs = useRef(0)
  useEffect(() => {
    const look = (): void => {
      const frame = live.latest
      if (!frame || frame.run !== shape.run) return
      const nowMs = performance.now()
      if (frame.playing && nowMs - shownMs.current < FIGURES_MS) return
      shownMs.current = nowMs
      // Read now: by the time React asks, the frame's arrays are the worker's again.
      const value = read(frame, shape)
      setReading(() => value)
    }
    look()
    return live.subscribe('frame', look)
  }, [live, shape, read])
  return reading
}

/** The moment now. */
export const useMoment = (running: Running): Moment => useReading(running, momentOf)

/** Draws by hand with every frame of a run, at most once a screen refresh; what it is given must be used at once. */
export const useEachFrame = ({ live, shape }: Running, draw: (frame: Frame) => void): void => {
  const latestDraw = useRef(draw)
  latestDraw.current = draw
  useEffect(() => {
    let request = 0
    const drawNow = (): void => {
      request = 0
      if (live.latest?.run === shape.run) latestDraw.current(live.latest)
    }
    const end = live.subscribe('frame', () => {
      request ||= requestAnimationFrame(drawNow)
    })
    return () => {
      end()
      cancelAnimationFrame(request)
    }
  }, [live, shape])
  useEffect(() => {
    if (live.latest?.run === shape.run) draw(live.latest)
  })
}

/** What a live grind tells beside its frames, renewed as that changes. @param read gives the same object until then */
export const useTold = <T>(live: LiveGrind | null, read: () => T): T => {
  const listen = useCallback((changed: () => void) => live?.subscribe('history', changed) ?? (() => undefined), [live])
  return useSyncExternalStore(listen, read)
}

/** How far the run is worked out, as a number that renews the reader. */
export const useHistoryLength = ({ live, shape }: Running): number =>
  useTold(live, () => (shape.run === live.shape?.run ? live.history.length : 0))

const NO_PROBLEMS: readonly Problem[] = []

/** Why the run cannot begin, or ends before its last sweep. */
export const useRunProblems = (live: LiveGrind | null): readonly Problem[] =>
  useTold(live, () => live?.problems ?? NO_PROBLEMS)
