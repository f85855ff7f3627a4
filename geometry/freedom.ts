import type { Job, Setting } from './job.ts'
import { quantities } from './quantities.ts'
import type { FreedomReport, Side } from './report.ts'
import { failed, ok, problem, type Result } from './result.ts'
import type { SetUp } from './setUp.ts'
import { asin, atan, sin, tan } from './trigonometry.ts'
import { degFromRad, radFromDeg } from './units.ts'

/** How far a fixture may turn on each side, as tangents of the turn, both >= 0; right lets the right corner be ground back. */
export interface Stops {
  readonly slopeLeft: number
  readonly slopeRight: number
}

/**
 * What a fixture lets the blade do besides tilting about the bar:
 *
 *     kind       turns   guided by   stops
 *     square     none    wheel       0
 *     steered    yaw     wheel       free play / guide arm, or the yaw given
 *     rocking    roll    wheel       the roll given
 *     swing      yaw     hand        amplitude: the yaw given, or what the traverse asks at the pin's distance
 *     freehand   yaw     wheel       none: the steepest turn there is, which nothing may reach
 */
export interface Freedom {
  readonly turns: 'none' | 'yaw' | 'roll'
  readonly guidedBy: 'wheel' | 'hand'
  /** Nothing carries moment at the stops. */
  readonly unstopped: boolean
  /** Pivot or pin to edge, along the blade. */
  readonly pivotToEdgeMm: number
  /** Slope of the edge line in the plane of the back for a small turn: 1 for a yaw, 1 / tan(bevel) for a roll. */
  readonly edgePerTurn: number
  /** For each setting of the job in turn, the first one first. */
  readonly settings: readonly [Stops, ...Stops[]]
}

/** Steepest turn that any fixture here is given, as a slope. */
const steepestSlope = (): number => tan(radFromDeg(quantities.motion.yawLeftDeg.max))

/** @returns the slope that stop turns give, lash included, or null where arm or pitch is not known */
export const slopeOfTurns = ({ fixture, errors }: Job, turns: number): number | null => {
  const { guideArmMm, screwPitchMm } = fixture
  return guideArmMm === null || screwPitchMm === null ? null : (turns * screwPitchMm + errors.stopLashMm) / guideArmMm
}

/** @returns turns that give a slope, not below 0, or null where arm or pitch is not known */
export const turnsOfSlope = ({ fixture, errors }: Job, slope: number): number | null => {
  const { guideArmMm, screwPitchMm } = fixture
  if (guideArmMm === null || screwPitchMm === null) return null
  return Math.max((slope * guideArmMm - errors.stopLashMm) / screwPitchMm, 0)
}

/** Free play that stops are set to (mm). */
export interface FreePlay {
  readonly leftMm: number
  readonly rightMm: number
}

/** @returns the free play that a steered job's stops are set to, lash not counted; null where arm or pitch is not known, or several settings follow one another */
export const freePlayOf = ({ fixture, motion }: Job): FreePlay | null => {
  const { kind, guideArmMm, screwPitchMm } = fixture
  if (kind !== 'steered' || guideArmMm === null || motion.schedule.length > 0) return null
  const side = (turns: number, yawDeg: number | null) =>
    yawDeg === null ? turns * (screwPitchMm ?? 0) : guideArmMm * tan(radFromDeg(yawDeg))
  if (screwPitchMm === null && (motion.yawLeftDeg === null || motion.yawRightDeg === null)) return null
  return {
    leftMm: side(motion.stopTurnsLeft, motion.yawLeftDeg),
    rightMm: side(motion.stopTurnsRight, motion.yawRightDeg),
  }
}

/** @returns most turns before the steepest yaw or the end of the screw, or null where arm or pitch is not known */
export const mostTurns = (job: Job): number | null => {
  const turns = turnsOfSlope(job, steepestSlope())
  return turns === null ? null : Math.min(quantities.motion.stopTurnsLeft.max, turns)
}

/** @returns steepest slope that a job's stops can be set to, or null where there are none to set */
export const mostSlope = (job: Job): number | null => {
  switch (job.fixture.kind) {
    case 'steered': {
      const turns = mostTurns(job)
      return turns === null ? steepestSlope() : slopeOfTurns(job, turns)
    }
    case 'rocking':
      return tan(radFromDeg(quantities.motion.rollLeftDeg.max))
    default:
      return null
  }
}

/** What a setting says of one side. */
const saidOf = (setting: Setting, side: Side) =>
  side === 'left'
    ? { yawDeg: setting.yawLeftDeg, rollDeg: setting.rollLeftDeg, turns: setting.stopTurnsLeft, name: 'Left' }
    : { yawDeg: setting.yawRightDeg, rollDeg: setting.rollRightDeg, turns: setting.stopTurnsRight, name: 'Right' }

const steeredSlope = (job: Job, setting: Setting, side: Side, path: string): Result<number> => {
  const { yawDeg, turns, name } = saidOf(setting, side)
  if (yawDeg !== null) return ok(tan(radFromDeg(yawDeg)))
  const slope = slopeOfTurns(job, turns)
  if (slope === null) {
    const absent = job.fixture.guideArmMm === null ? 'guideArmMm' : 'screwPitchMm'
    return failed(problem('turnsNeedPitch', `fixture.${absent}`))
  }
  if (slope > steepestSlope())
    return failed(problem('tooLarge', `${path}.stopTurns${name}`, { max: mostTurns(job) as number }))
  return ok(slope)
}

const swingSlope = (setting: Setting, side: Side, radiusMm: number, path: string): Result<number> => {
  const { yawDeg } = saidOf(setting, side)
  if (yawDeg !== null) return ok(tan(radFromDeg(yawDeg)))
  const most = radiusMm * sin(radFromDeg(quantities.motion.yawLeftDeg.max))
  if (setting.traverseMm > most) return failed(problem('tooLarge', `${path}.traverseMm`, { max: most }))
  return ok(tan(asin(setting.traverseMm / radiusMm)))
}

const slopeOf = (job: Job, setting: Setting, side: Side, path: string): Result<number> => {
  const { rollDeg } = saidOf(setting, side)
  switch (job.fixture.kind) {
    case 'square':
      return ok(0)
    case 'steered':
      return steeredSlope(job, setting, side, path)
    case 'rocking':
      return ok(tan(radFromDeg(rollDeg ?? 0)))
    case 'swing':
      return swingSlope(setting, side, job.fixture.swingRadiusMm as number, path)
    case 'freehand':
      return ok(steepestSlope())
  }
}

const stopsOf = (job: Job, setting: Setting, path: string): Result<Stops> => {
  const left = slopeOf(job, setting, 'left', path)
  if (!left.ok) return left
  const right = slopeOf(job, setting, 'right', path)
  return right.ok ? ok({ slopeLeft: left.value, slopeRight: right.value }) : right
}

const pivotOf = ({ fixture }: Job, setUp: SetUp): number => {
  if (fixture.kind === 'swing') return fixture.swingRadiusMm as number
  return setUp.projectionMm + (fixture.kind === 'steered' ? fixture.pivotSetbackMm : 0)
}

const turnsOf = { square: 'none', steered: 'yaw', rocking: 'roll', swing: 'yaw', freehand: 'yaw' } as const

/** The settings of a job in turn: its motion, then what its schedule changes of it. */
export const settingsOf = ({ motion }: Job): readonly Setting[] => [motion, ...motion.schedule]

/** The freedom that fixture and stops of a job leave, setting by setting. */
export const freedomOf = (job: Job, setUp: SetUp): Result<Freedom> => {
  const { kind } = job.fixture
  const first = stopsOf(job, job.motion, 'motion')
  if (!first.ok) return first
  const settings: [Stops, ...Stops[]] = [first.value]
  for (const [k, setting] of job.motion.schedule.entries()) {
    const stops = stopsOf(job, setting, `motion.schedule.${k}`)
    if (!stops.ok) return stops
    settings.push(stops.value)
  }
  const pivotToEdgeMm = pivotOf(job, setUp)
  if (!(pivotToEdgeMm > 0)) return failed(problem('pivotBeyondEdge', 'fixture.pivotSetbackMm'))
  const guidedBy = kind === 'swing' ? 'hand' : 'wheel'
  const edgePerTurn = kind === 'rocking' ? 1 / tan(setUp.bevelRad) : 1
  return ok({ turns: turnsOf[kind], guidedBy, unstopped: kind === 'freehand', pivotToEdgeMm, edgePerTurn, settings })
}

/** Turn of the first setting and travel of the edge's midpoint on each side, as a user reads them; null without stops. */
export const freedomFigures = ({
  turns,
  unstopped,
  pivotToEdgeMm,
  settings,
}: Freedom): Omit<FreedomReport, 'forAim' | 'turnsForAim' | 'turnsCalibrated'> => {
  const [first] = settings
  const [leftRad, rightRad] = [atan(first.slopeLeft), atan(first.slopeRight)]
  const yaw = turns === 'yaw' && !unstopped
  const roll = turns === 'roll'
  return {
    yawLeftDeg: unstopped ? null : yaw ? degFromRad(leftRad) : 0,
    yawRightDeg: unstopped ? null : yaw ? degFromRad(rightRad) : 0,
    rollLeftDeg: roll ? degFromRad(leftRad) : 0,
    rollRightDeg: roll ? degFromRad(rightRad) : 0,
    sweepLeftMm: unstopped ? null : yaw ? pivotToEdgeMm * sin(leftRad) : 0,
    sweepRightMm: unstopped ? null : yaw ? pivotToEdgeMm * sin(rightRad) : 0,
  }
}
