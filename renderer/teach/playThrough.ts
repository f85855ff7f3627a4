import type { Running } from '../grind/useLiveGrind.ts'

/** A grind is shown in so many seconds, however many sweeps it has, but never slower than by hand. */
const SHOWN_S = 5

/**
 * Plays a run from its start to its end.
 * @param atOnce for those who want as little motion as can be
 * @param shown told once, when the end is there
 * @returns a function that gives up waiting
 */
export const playThrough = ({ live, shape }: Running, atOnce: boolean, shown: () => void): (() => void) => {
  const last = shape.sweeps * shape.stepsPerSweep
  const end = live.subscribe('frame', () => {
    const frame = live.latest
    if (frame?.run !== shape.run || frame.playing || frame.step < Math.min(last, frame.lastStep)) return
    end()
    shown()
  })
  live.seek(atOnce ? last : 0)
  if (!atOnce) live.play(Math.max(1, shape.sweeps / SHOWN_S))
  return end
}
