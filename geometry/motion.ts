import type { Freedom } from './freedom.ts'
import type { Job } from './job.ts'
import { PI, sin } from './trigonometry.ts'

/**
 * How the blade is moved: a sweep is half a period, steps are equal in time, and the first sweep starts in the middle and
 * goes to its start side. At step k the load stands at fingerReach x f and the wheel at -traverse x f, f the path.
 */
export interface Motion {
  readonly yawSlopeLeft: number
  readonly yawSlopeRight: number
  readonly loadN: number
  readonly bedStiffnessNPerMm3: number
  readonly removalPerStepMm3: number
  readonly stepsPerSweep: number
  /** f at each step of one period, -1 left to +1 right. */
  readonly path: Float64Array
  readonly fingerReachMm: number
  readonly traverseMm: number
}

/** f at a part of the period, 0 to 1. */
const paths: Record<Job['motion']['path'], (part: number, endShare: number) => number> = {
  sinusoid: (part) => sin(2 * PI * part),
  triangle: (part) => (part < 0.25 ? 4 * part : part < 0.75 ? 2 - 4 * part : 4 * part - 4),
  threePosition: (part, endShare) =>
    Math.abs(part - 0.25) < endShare / 2 ? 1 : Math.abs(part - 0.75) < endShare / 2 ? -1 : 0,
}

/** The motion that a job describes, within the freedom its fixture leaves. */
export const planMotion = ({ motion }: Job, freedom: Freedom): Motion => {
  const { stepsPerSweep, startSide, path, endShare } = motion
  const side = startSide === 'right' ? 1 : -1
  const period = 2 * stepsPerSweep
  return {
    yawSlopeLeft: freedom.yawSlopeLeft,
    yawSlopeRight: freedom.yawSlopeRight,
    loadN: motion.loadN,
    bedStiffnessNPerMm3: motion.bedStiffnessNPerMm3,
    removalPerStepMm3: motion.removalPerSweepMm3 / stepsPerSweep,
    stepsPerSweep,
    path: Float64Array.from({ length: period }, (_, k) => side * paths[path](k / period, endShare)),
    fingerReachMm: motion.fingerReachMm,
    traverseMm: motion.traverseMm,
  }
}

const pathAt = (motion: Motion, step: number): number => motion.path[step % motion.path.length] as number

/** Where the load is centred across the blade at a step, + right. */
export const loadPlaceMm = (motion: Motion, step: number): number => motion.fingerReachMm * pathAt(motion, step)

/** Where the blade's centre line stands along the wheel at a step: it moves left as the load moves right. */
export const traverseAtMm = (motion: Motion, step: number): number => -motion.traverseMm * pathAt(motion, step)
