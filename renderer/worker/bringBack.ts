import type { HandMade, LiveGrind } from './liveGrind.ts'

/** Where a grind stood when its worker was lost. */
export interface RunStanding {
  readonly step: number
  readonly handMade: HandMade | null
}

/** @returns where a grind stands; what a hand that still holds has made since it took hold is not in it */
export const standingOf = ({ latest, handMade }: LiveGrind): RunStanding => ({ step: latest?.step ?? 0, handMade })

/**
 * Brings a run that has just been started to where another of the same job stood. The engine is deterministic, so the same
 * steps make the same blade; those made by hand are made again.
 */
export const bringBack = (live: LiveGrind, run: number, { step, handMade }: RunStanding): void => {
  if (handMade === null) {
    live.seek(step)
    return
  }
  const { fromStep, path } = handMade
  const end = live.subscribe('frame', () => {
    if (live.latest?.run !== run || live.latest.step !== fromStep) return
    end()
    live.remake(path)
    live.seek(step)
  })
  live.seek(fromStep)
}
