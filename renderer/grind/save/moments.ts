import { failed, ok, problem, type Result } from '../../../geometry/result.ts'
import type { LiveGrind } from '../../worker/liveGrind.ts'

/** A frame whose moment differs from what was asked by less than this share of a step is the one (rounding of the sweep). */
const SAME_STEP = 1e-6

/** Waits until what has changed is in the picture: one frame of the window to lay it out, one to draw it. */
const drawn = (): Promise<void> =>
  new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => done())))

type Arrival = Result<null> | 'under way' | 'elsewhere'

/** How the grind stands to the moment that is wanted of it. */
const arrivalOf = ({ latest, shape, problems }: LiveGrind, run: number, step: number): Arrival => {
  if (!latest || !shape || shape.run !== run) return failed(problem('clipRunChanged'))
  // The run ends before: it is told why.
  if (latest.lastStep < step && problems.length > 0) return { ok: false, problems }
  if (latest.run !== run || latest.playing) return 'under way'
  return Math.abs(latest.sweep * shape.stepsPerSweep - step) < SAME_STEP ? ok(null) : 'elsewhere'
}

/** Waits for the moment; moved elsewhere meanwhile, by a hand on the run strip, the grind is sent there again. */
const arrive = (live: LiveGrind, run: number, step: number, signal: AbortSignal): Promise<Result<null>> =>
  new Promise((done) => {
    const finish = (result: Result<null>): void => {
      end()
      signal.removeEventListener('abort', stop)
      done(result)
    }
    const stop = (): void => finish(failed(problem('cancelled')))
    const look = (): void => {
      const arrival = arrivalOf(live, run, step)
      if (arrival === 'elsewhere') live.seek(step)
      else if (arrival !== 'under way') finish(arrival)
    }
    const end = live.subscribe('frame', look)
    signal.addEventListener('abort', stop)
    if (signal.aborted) stop()
    else live.seek(step)
  })

/**
 * Brings a grind to a moment exactly, and the whole screen with it.
 * @param step whole, or between two steps
 * @returns refused where the run ends before, began again, or the wait was broken off
 */
export const goTo = async (live: LiveGrind, run: number, step: number, signal: AbortSignal): Promise<Result<null>> => {
  const arrived = await arrive(live, run, step, signal)
  if (arrived.ok) await drawn()
  return arrived
}
