import { GUESSED_SWEEP_SECONDS } from '../../../geometry/removal.ts'
import { failed, ok, problem, type Result } from '../../../geometry/result.ts'

/** What a clip shows. */
export interface ClipChoice {
  /** Sweeps done at its first moment and at its end. */
  readonly fromSweep: number
  readonly toSweep: number
  readonly framesPerSecond: number
  /** How many times slower than at the wheel. */
  readonly slower: number
}

/** A picture of a clip: when it is shown, and the moment of the grind that it shows. */
export interface ClipFrame {
  readonly atSeconds: number
  readonly sweep: number
  /** The same in steps of the run, whole or between two. */
  readonly step: number
}

/** What of a run a clip is cut from. */
interface Run {
  readonly sweeps: number
  readonly stepsPerSweep: number
}

/** Most pictures in a clip: five minutes at 30 a second, beyond which nobody looks and the file outgrows the memory it is made in. */
const MOST_FRAMES = 9000

/** How many pictures it takes: each stands for its part of a second, the end itself begins no further one. */
export const frameCount = ({ fromSweep, toSweep, framesPerSecond, slower }: ClipChoice): number =>
  Math.round((toSweep - fromSweep) * GUESSED_SWEEP_SECONDS * slower * framesPerSecond)

/** @returns every picture of a clip, in order; refused where there is none, too many, or the run ends before */
export const planClip = (choice: ClipChoice, run: Run): Result<readonly ClipFrame[]> => {
  const { fromSweep, toSweep, framesPerSecond, slower } = choice
  if (toSweep > run.sweeps) return failed(problem('clipBeyond', 'out.toSweep', { sweeps: run.sweeps }))
  if (fromSweep >= toSweep) return failed(problem('clipBackwards', 'out.toSweep'))
  const count = frameCount(choice)
  if (count > MOST_FRAMES) return failed(problem('clipTooLong', '', { frames: count, most: MOST_FRAMES }))
  return ok(
    Array.from({ length: count }, (_, i) => {
      const atSeconds = i / framesPerSecond
      const sweep = fromSweep + atSeconds / (slower * GUESSED_SWEEP_SECONDS)
      return { atSeconds, sweep, step: sweep * run.stepsPerSweep }
    }),
  )
}
