import { presentBevelDeg } from './hollow.ts'
import type { Job, Setting } from './job.ts'
import type { SetUp } from './setUp.ts'

/** What was measured or set, as `tolerances` names it. */
export type Input = keyof Job['tolerances']

/** A job with one input off by some amount, in the input's own unit. */
export type Shift = (job: Job, by: number) => Job

/**
 * The job as it stands at the wheel: bar and projection where they were set, bevel on the blade as it is. Whichever corner
 * of the triangle was found rather than given was then set by measuring too, and from there on nothing follows by itself:
 * a projection that is off changes the bevel that comes out, not the bar.
 */
export const asSet = (job: Job, setUp: SetUp): Job => ({
  ...job,
  blade: { ...job.blade, currentBevelDeg: presentBevelDeg(job, setUp) },
  aim: { ...job.aim, bevelAngleDeg: null, projectionMm: setUp.projectionMm, barDistanceMm: setUp.barDistanceMm },
})

const movedBar = (job: Job, by: number): Job => ({
  ...job,
  aim: { ...job.aim, barDistanceMm: (job.aim.barDistanceMm as number) + by },
})

/** The bar is measured from the wheel's rim, so a radius that is off takes the bar with it. */
const wheelDiameter: Shift = (job, by) => ({
  ...movedBar(job, by / 2),
  station: { ...job.station, wheelDiameterMm: job.station.wheelDiameterMm + by },
})

const projection: Shift = (job, by) => ({
  ...job,
  aim: { ...job.aim, projectionMm: (job.aim.projectionMm as number) + by },
})

const seatOffset: Shift = (job, by) => ({
  ...job,
  fixture: { ...job.fixture, seatOffsetMm: job.fixture.seatOffsetMm + by },
})

const guideArm: Shift = (job, by) => ({
  ...job,
  fixture: { ...job.fixture, guideArmMm: (job.fixture.guideArmMm as number) + by },
})

const error =
  (name: 'mountingAskewDeg' | 'barAskewDeg'): Shift =>
  (job, by) => ({ ...job, errors: { ...job.errors, [name]: job.errors[name] + by } })

/** The same change in every setting: a screw counted from a wrong nought, or a hand, is off alike in all of them. */
const inEverySetting = (job: Job, change: (setting: Setting) => Partial<Setting>): Job => ({
  ...job,
  motion: {
    ...job.motion,
    ...change(job.motion),
    schedule: job.motion.schedule.map((setting) => ({ ...setting, ...change(setting) })),
  },
})

type SettingField = 'stopTurnsLeft' | 'stopTurnsRight' | 'fingerReachMm'
type AngleField = 'yawLeftDeg' | 'yawRightDeg' | 'rollLeftDeg' | 'rollRightDeg'

/** No stop stands, and no finger presses, on the wrong side of nought. */
const length =
  (name: SettingField): Shift =>
  (job, by) =>
    inEverySetting(job, (setting) => ({ [name]: Math.max(setting[name] + by, 0) }))

const angle =
  (...names: readonly AngleField[]): Shift =>
  (job, by) =>
    inEverySetting(job, (setting) => Object.fromEntries(names.flatMap((name) => shiftedAngle(name, setting[name], by))))

const shiftedAngle = (name: AngleField, deg: number | null, by: number) =>
  deg === null ? [] : [[name, Math.max(deg + by, 0)] as const]

const removal: Shift = (job, by) => ({
  ...job,
  motion: { ...job.motion, removalPerSweepMm3: job.motion.removalPerSweepMm3 * (1 + by) },
})

/** Ways in which each input may be off, independent of each other: a stop on the left says nothing of the one on the right. */
const shifts: Readonly<Record<Input, readonly Shift[]>> = {
  wheelDiameterMm: [wheelDiameter],
  projectionMm: [projection],
  barMm: [movedBar],
  seatOffsetMm: [seatOffset],
  guideArmMm: [guideArm],
  stopTurns: [length('stopTurnsLeft'), length('stopTurnsRight')],
  stopAngleDeg: [angle('yawLeftDeg', 'rollLeftDeg'), angle('yawRightDeg', 'rollRightDeg')],
  mountingAskewDeg: [error('mountingAskewDeg')],
  barAskewDeg: [error('barAskewDeg')],
  fingerReachMm: [length('fingerReachMm')],
  removalShare: [removal],
}

/** Whether an input has a say in a job at all. */
const counts = (job: Job, input: Input): boolean => {
  const { kind, guideArmMm } = job.fixture
  const settings = [job.motion, ...job.motion.schedule]
  const steeredByTurns = kind === 'steered' && guideArmMm !== null
  const givenAngle = ({ yawLeftDeg, yawRightDeg, rollLeftDeg, rollRightDeg }: Setting) =>
    kind === 'rocking' ? rollLeftDeg !== null || rollRightDeg !== null : yawLeftDeg !== null || yawRightDeg !== null
  if (input === 'guideArmMm' || input === 'stopTurns') return steeredByTurns
  if (input === 'stopAngleDeg') return kind !== 'square' && kind !== 'freehand' && settings.some(givenAngle)
  if (input === 'fingerReachMm') return kind !== 'swing'
  return true
}

/** One input of a job that is not known exactly. */
export interface Doubt {
  readonly input: Input
  /** One standard deviation. */
  readonly deviation: number
  readonly shifts: readonly Shift[]
}

/** All inputs of a job that are not known exactly and have a say in it, in the order of `tolerances`. */
export const doubtsOf = (job: Job): readonly Doubt[] =>
  (Object.keys(shifts) as Input[])
    .filter((input) => job.tolerances[input] > 0 && counts(job, input))
    .map((input) => ({ input, deviation: job.tolerances[input], shifts: shifts[input] }))
