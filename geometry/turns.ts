import { calibratedFreePlay } from './calibrated.ts'
import { FORMED_SHARE, formEdge } from './formed.ts'
import { type Freedom, mostSlope, mostTurns, turnsOfSlope } from './freedom.ts'
import type { Job } from './job.ts'
import type { ForAimReport, TurnsReport } from './report.ts'
import { RELIEF_AIM_MM } from './tolerances.ts'
import { atan } from './trigonometry.ts'
import { degFromRad } from './units.ts'

/** Most formed edges for one answer: the relief is nearly proportional to the turns, so three or four do as a rule. */
const MOST_TRIALS = 12
/** Below this share the stops are not what holds the edge back: the fingers do not reach far enough. */
const SLACK_SHARE = 0.4

/** One side of the search: the slope of the stop tried, and slopes known to be too little and too much. */
interface Trial {
  readonly slope: number
  readonly low: number
  readonly high: number
}

/** The next slope on one side: scaled by what the last gave, kept inside the bracket. */
const nextTrial = ({ slope, low, high }: Trial, reliefNowMm: number, reliefMm: number, most: number): Trial => {
  const bracket = reliefNowMm < reliefMm ? { low: slope, high } : { low, high: slope }
  const scaled = Math.min((slope * reliefMm) / Math.max(reliefNowMm, RELIEF_AIM_MM), most)
  const inside = scaled > bracket.low && (scaled < bracket.high || scaled === most)
  return { ...bracket, slope: inside ? scaled : (bracket.low + bracket.high) / 2 }
}

/** What the search works on. */
export interface Search {
  readonly job: Job
  readonly freedom: Freedom
  readonly reliefMm: number
  /** Steepest slope of the stops. */
  readonly most: number
}

type Code = TurnsReport['code']

/** Why a side cannot reach its relief, or null while it still may. */
export const outOfReach = (
  { job, freedom, reliefMm, most }: Search,
  slope: number,
  reliefNowMm: number,
): Code | null => {
  if (reliefNowMm >= reliefMm) return null
  const straightMm = slope * freedom.edgePerTurn * (job.blade.widthMm / 2)
  if (job.station.wheelWidthMm / 2 + job.motion.traverseMm < job.blade.widthMm / 2) return 'wheelTooNarrow'
  if (reliefNowMm < SLACK_SHARE * straightMm) return 'fingersTooShort'
  return slope === most ? 'beyondStopTravel' : null
}

/** Left and right alike: only the side the first sweep takes tells them apart, and that fades as the edge forms. */
export const isMirrored = ({ blade, fixture, errors, motion }: Job): boolean => {
  const edge = blade.startEdge ?? []
  const { barAskewDeg, barRollDeg, wheelConeMm, mountingAskewDeg } = errors
  const trueSetUp = [fixture.pivotOffsetMm, barAskewDeg, barRollDeg, wheelConeMm, mountingAskewDeg].every(
    (e) => e === 0,
  )
  return trueSetUp && motion.path !== 'recorded' && edge.every((v, i) => v === edge[edge.length - 1 - i])
}

/** Stops found, or the nearest to them. */
export interface ForAim {
  readonly slopeLeft: number
  readonly slopeRight: number
  readonly sweeps: number
  readonly code: Code
}

const search = (of: Search): ForAim => {
  const { job, freedom, reliefMm, most } = of
  const first = Math.min(most, reliefMm / (job.blade.widthMm / 2) / freedom.edgePerTurn / FORMED_SHARE)
  let left: Trial = { slope: first, low: 0, high: most }
  let right = left
  let sweeps = 0
  for (let k = 0; k < MOST_TRIALS; k++) {
    const stops = { slopeLeft: left.slope, slopeRight: right.slope }
    const formed = formEdge(job, freedom, stops)
    if (formed === null) return { ...stops, sweeps, code: 'noBalance' }
    sweeps = formed.sweeps
    const { relief } = formed
    const meanMm = (relief.leftMm + relief.rightMm) / 2
    const { leftMm, rightMm } = isMirrored(job) ? { leftMm: meanMm, rightMm: meanMm } : relief
    if (Math.max(Math.abs(leftMm - reliefMm), Math.abs(rightMm - reliefMm)) < RELIEF_AIM_MM)
      return { ...stops, sweeps, code: 'reachable' }
    const code = outOfReach(of, left.slope, leftMm) ?? outOfReach(of, right.slope, rightMm)
    if (code !== null) return { ...stops, sweeps, code }
    left = nextTrial(left, leftMm, reliefMm, most)
    right = nextTrial(right, rightMm, reliefMm, most)
  }
  return { slopeLeft: left.slope, slopeRight: right.slope, sweeps, code: 'reachable' }
}

const STILL = { slopeLeft: 0, slopeRight: 0, sweeps: 0 }

/**
 * Stops on each side that form the wanted relief at both corners, by the contact model, uncalibrated: each trial forms an
 * edge and scales the last, inside a bracket.
 * @returns null for a fixture without stops to set, unless a straight edge is wanted
 */
export const stopsForAim = (job: Job, freedom: Freedom, reliefMm: number): ForAim | null => {
  if (reliefMm === 0) return { ...STILL, code: 'reachable' }
  if (job.fixture.kind === 'square') return { ...STILL, code: 'squareFixture' }
  const most = mostSlope(job)
  return most === null ? null : search({ job, freedom, reliefMm, most })
}

/** Stops as degrees of the fixture's turn. */
export const forAimReport = ({ slopeLeft, slopeRight, sweeps, code }: ForAim): ForAimReport => ({
  leftDeg: degFromRad(atan(slopeLeft)),
  rightDeg: degFromRad(atan(slopeRight)),
  sweeps,
  reachable: code === 'reachable',
  code,
})

/** Stops as turns of a steered fixture's screws; null where it has none, or their arm or pitch is not known. */
export const turnsReport = (job: Job, { slopeLeft, slopeRight, code }: ForAim): TurnsReport | null => {
  const reachable = code === 'reachable'
  if (slopeLeft === 0 && slopeRight === 0) return { left: 0, right: 0, reachable, code }
  const left = turnsOfSlope(job, slopeLeft)
  const right = turnsOfSlope(job, slopeRight)
  return job.fixture.kind !== 'steered' || left === null || right === null ? null : { left, right, reachable, code }
}

/**
 * The same turns corrected by the fixture's calibration; null without one. Beyond what the screws can do they are the most
 * that they can. A model's answer that cannot be reached is left as it is: it has no free play that a scale could mend.
 */
export const calibratedTurns = (job: Job, byModel: TurnsReport | null): TurnsReport | null => {
  const { calibration, screwPitchMm } = job.fixture
  if (byModel === null || calibration === null || screwPitchMm === null) return null
  if (!byModel.reachable || byModel.left + byModel.right === 0) return byModel
  const corrected = (turns: number) => calibratedFreePlay(calibration, turns * screwPitchMm) / screwPitchMm
  const [left, right] = [corrected(byModel.left), corrected(byModel.right)]
  const most = mostTurns(job) ?? Number.POSITIVE_INFINITY
  if (Math.max(left, right) <= most) return { ...byModel, left, right }
  return { left: Math.min(left, most), right: Math.min(right, most), reachable: false, code: 'beyondStopTravel' }
}
