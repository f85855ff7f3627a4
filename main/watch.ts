import { failed, problem, type Result } from '../geometry/result.ts'

/** How far a long work is, and whether anybody still waits for it. */
export interface Watch {
  readonly signal: AbortSignal
  /** @param done 0 to 1 */
  progress(done: number): void
}

/** Nobody waits for the answer any more. */
class Stopped extends Error {}

/** @returns what work answers, or `cancelled` where it was stopped between two rows; in a transaction nothing is then kept */
export const unlessStopped = async <T>(work: () => Promise<Result<T>>): Promise<Result<T>> => {
  try {
    return await work()
  } catch (error) {
    if (error instanceof Stopped) return failed(problem('cancelled'))
    throw error
  }
}

/** Progress is told this often at most; more is not seen. */
const STEP = 0.01

/**
 * Counts rows. Whoever counts lets other messages in between, or nobody's stop is heard.
 *
 * @param from share done before @param to share done after all of them
 * @returns to be told of more rows; it throws, for `unlessStopped`, where nobody waits any more
 */
export const counting = ({ signal, progress }: Watch, rows: number, from = 0, to = 1) => {
  let [gone, told] = [0, from]
  return (more: number): void => {
    if (signal.aborted) throw new Stopped()
    gone += more
    const done = from + ((to - from) * gone) / Math.max(rows, 1)
    if (done - told < STEP) return
    told = done
    progress(Math.min(done, 1))
  }
}
