import { type Freedom, mostTurns, turnsOfSlope } from './freedom.ts'
import type { Job, Setting } from './job.ts'
import { inPairs, type Phase } from './phases.ts'
import { atan } from './trigonometry.ts'
import { degFromRad } from './units.ts'

/** Decimals to which stops can be set and read: a hundredth of a turn is 3 um at the corner of a wide iron, as is a thousandth of a degree. */
const STEPS_PER_TURN = 100
const STEPS_PER_DEGREE = 1000

const rounded = (value: number, stepsPerUnit: number): number => Math.round(value * stepsPerUnit) / stepsPerUnit

/** Turns as set, never past the end of the screw. */
const turnsAsSet = (job: Job, turns: number): number => {
  const nearest = rounded(turns, STEPS_PER_TURN)
  const most = mostTurns(job) ?? nearest
  return nearest <= most ? nearest : Math.floor(most * STEPS_PER_TURN) / STEPS_PER_TURN
}

type Stop = Pick<
  Setting,
  'stopTurnsLeft' | 'stopTurnsRight' | 'yawLeftDeg' | 'yawRightDeg' | 'rollLeftDeg' | 'rollRightDeg'
>

const NO_STOPS: Stop = {
  stopTurnsLeft: 0,
  stopTurnsRight: 0,
  yawLeftDeg: null,
  yawRightDeg: null,
  rollLeftDeg: null,
  rollRightDeg: null,
}

/** Stops in the words of the fixture: roll, turns where arm and pitch are known, else yaw. */
const stopsIn = (job: Job, { slopeLeft, slopeRight }: Phase, { turns }: Freedom): Stop => {
  const [left, right] = [turnsOfSlope(job, slopeLeft), turnsOfSlope(job, slopeRight)]
  const inDeg = (slope: number) => rounded(degFromRad(atan(slope)), STEPS_PER_DEGREE)
  if (turns === 'roll') return { ...NO_STOPS, rollLeftDeg: inDeg(slopeLeft), rollRightDeg: inDeg(slopeRight) }
  if (left === null || right === null)
    return { ...NO_STOPS, yawLeftDeg: inDeg(slopeLeft), yawRightDeg: inDeg(slopeRight) }
  return { ...NO_STOPS, stopTurnsLeft: turnsAsSet(job, left), stopTurnsRight: turnsAsSet(job, right) }
}

/** A phase as it is set at the wheel and written in a job: stops as finely as they are read, sweeps in pairs. */
export const settingOf = (job: Job, phase: Phase, freedom: Freedom): Setting => ({
  ...stopsIn(job, phase, freedom),
  traverseMm: job.motion.traverseMm,
  fingerReachMm: phase.fingerReachMm,
  sweeps: inPairs(phase.sweeps),
})

/** The job with its settings replaced by those of a schedule. @param settings one or more, in turn */
export const withSettings = (job: Job, [first, ...further]: readonly Setting[]): Job => ({
  ...job,
  motion: { ...job.motion, ...first, schedule: further },
})
