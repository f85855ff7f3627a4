import { type Job, jobSchema } from '../../geometry/job.ts'
import { createGrindLoop } from '../../renderer/worker/grindLoop.ts'
import type { Frame, FromWorker } from '../../renderer/worker/protocol.ts'

export const STEPS = 8
export const SWEEPS = 6

/** A steered job that is ground in six short sweeps on a coarse grid. */
export const jobOf = (motion: Partial<Job['motion']> = {}): Job =>
  jobSchema.parse({
    version: 1,
    blade: { widthMm: 57, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up', currentBevelDeg: 25 },
    station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12 },
    fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8 },
    aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.5 },
    motion: { stopTurnsLeft: 2, stopTurnsRight: 2, sweeps: SWEEPS, stepsPerSweep: STEPS, ...motion },
    grid: { across: 21, through: 5 },
  })

/** A worker loop whose clock stands still unless it is moved, and whose timers run when told to. */
export const bench = () => {
  let clockMs = 0
  const timers: (() => void)[] = []
  const posted: FromWorker[] = []
  const loop = createGrindLoop({
    post: (message) => posted.push(message),
    nowMs: () => clockMs,
    after: (_, work) => timers.push(work),
  })
  const runOut = (most = 5000): void => {
    for (let k = 0; k < most && timers.length > 0; k++) timers.shift()?.()
  }
  return {
    posted,
    timers,
    runOut,
    take: loop.take,
    /** Lets so much time pass, in pieces, with a slice after each. @param givesBack arrays at once, where no window does */
    pass: (ms: number, piece = 10, givesBack = true): void => {
      for (let gone = 0; gone < ms; gone += piece) {
        clockMs += piece
        const before = posted.length
        timers.shift()?.()
        for (const message of givesBack ? posted.slice(before) : []) {
          if (message.type === 'frame') loop.take({ type: 'give', ...message.frame })
        }
      }
    },
    frames: (): Frame[] => posted.flatMap((message) => (message.type === 'frame' ? [message.frame] : [])),
    lastFrame: (): Frame => posted.findLast((message) => message.type === 'frame')?.frame as Frame,
  }
}

/** Hands the arrays of the last frame back, as the window does. */
export const giveBack = ({ take, lastFrame }: ReturnType<typeof bench>): void =>
  take({ type: 'give', vMm: lastFrame().vMm, pressureNPerMm: lastFrame().pressureNPerMm })
