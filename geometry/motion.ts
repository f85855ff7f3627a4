import { type Freedom, type Stops, settingsOf } from './freedom.ts'
import type { Job, Setting } from './job.ts'
import { PI, sin, tan } from './trigonometry.ts'
import { radFromDeg } from './units.ts'

/** One setting of stops, reach and traverse, in force until a step. */
export interface MotionSetting extends Stops {
  readonly untilStep: number
  readonly fingerReachMm: number
  readonly traverseMm: number
}

/**
 * How the blade is moved: a sweep is half a period, steps are equal in time, and the first sweep starts in the middle and
 * goes to its start side. At step k the load stands at fingerReach x f and the wheel at -traverse x f, f the path.
 */
export interface Motion {
  /** In turn; the last one goes on. */
  readonly settings: readonly MotionSetting[]
  readonly loadN: number
  readonly bedStiffnessNPerMm3: number
  readonly removalPerStepMm3: number
  readonly stepsPerSweep: number
  /** f at each step of one period, -1 left to +1 right. */
  readonly path: Float64Array
  /** The hand turns the blade about a pin: f is then the share of the stops' slopes, and nothing traverses. */
  readonly byHand: boolean
  /** Nothing carries moment at the stops. */
  readonly unstopped: boolean
  /** Roll of the fixture when the load is at its ends, as a slope. */
  readonly parasiticRollSlope: number
  /** Steel per wheel worn away, by volume; null: the wheel keeps its shape. */
  readonly grindingRatio: number | null
}

/** f at a part of the period, 0 to 1. */
const paths = {
  sinusoid: (part: number) => sin(2 * PI * part),
  triangle: (part: number) => (part < 0.25 ? 4 * part : part < 0.75 ? 2 - 4 * part : 4 * part - 4),
  threePosition: (part: number, endShare: number) =>
    Math.abs(part - 0.25) < endShare / 2 ? 1 : Math.abs(part - 0.75) < endShare / 2 ? -1 : 0,
}

/** A recorded path at a part of its length, straight between samples, its end joined to its start. */
const recordedAt = (samples: readonly number[], part: number): number => {
  const place = part * samples.length
  const k = Math.floor(place)
  const [a, b] = [samples[k] as number, samples[(k + 1) % samples.length] as number]
  return a + (b - a) * (place - k)
}

/** Steps after which a job's path begins again. */
export const periodOf = ({ path, recordedSweeps, stepsPerSweep }: Job['motion']): number =>
  (path === 'recorded' ? recordedSweeps : 2) * stepsPerSweep

/** f at each step of one period. */
export const pathOf = (motion: Job['motion']): Float64Array => {
  const { path, recordedPath, startSide, endShare } = motion
  const steps = periodOf(motion)
  if (path === 'recorded')
    return Float64Array.from({ length: steps }, (_, k) => recordedAt(recordedPath as readonly number[], k / steps))
  const side = startSide === 'right' ? 1 : -1
  return Float64Array.from({ length: steps }, (_, k) => side * paths[path](k / steps, endShare))
}

const settingsInTurn = (job: Job, freedom: Freedom): readonly MotionSetting[] => {
  let untilStep = 0
  return settingsOf(job).map(({ sweeps, fingerReachMm, traverseMm }: Setting, k) => {
    untilStep += sweeps * job.motion.stepsPerSweep
    return { ...(freedom.settings[k] as Stops), untilStep, fingerReachMm, traverseMm }
  })
}

/** The motion that a job describes, within the freedom its fixture leaves. */
export const planMotion = (job: Job, freedom: Freedom): Motion => ({
  settings: settingsInTurn(job, freedom),
  loadN: job.motion.loadN,
  bedStiffnessNPerMm3: job.motion.bedStiffnessNPerMm3,
  removalPerStepMm3: job.motion.removalPerSweepMm3 / job.motion.stepsPerSweep,
  stepsPerSweep: job.motion.stepsPerSweep,
  path: pathOf(job.motion),
  byHand: freedom.guidedBy === 'hand',
  unstopped: freedom.unstopped,
  parasiticRollSlope: tan(radFromDeg(job.errors.parasiticRollDeg)),
  grindingRatio: job.station.grindingRatio,
})

/** Sweeps of all settings together. */
export const sweepsOf = (job: Job): number => settingsOf(job).reduce((sum, { sweeps }) => sum + sweeps, 0)

/** The setting in force at a step. */
export const settingAt = ({ settings }: Motion, step: number): MotionSetting =>
  settings.find(({ untilStep }) => step < untilStep) ?? (settings.at(-1) as MotionSetting)

/** f at a step. */
export const pathAt = (motion: Motion, step: number): number => motion.path[step % motion.path.length] as number

/** Where the load is centred across the blade at a step, + right. */
export const loadPlaceMm = (motion: Motion, step: number): number =>
  settingAt(motion, step).fingerReachMm * pathAt(motion, step)

/** Where the blade's centre line stands along the wheel at a step: it moves left as the load moves right. */
export const traverseAtMm = (motion: Motion, step: number): number =>
  motion.byHand ? 0 : -settingAt(motion, step).traverseMm * pathAt(motion, step)

/** The turn that the hand gives at a step, as a slope; null where the wheel turns the blade. */
export const handSlopeAt = (motion: Motion, step: number): number | null => {
  if (!motion.byHand) return null
  const share = pathAt(motion, step)
  const { slopeLeft, slopeRight } = settingAt(motion, step)
  return share * (share < 0 ? slopeLeft : slopeRight)
}
