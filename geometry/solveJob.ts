import { planOf } from './aim.ts'
import { bandOf, burrAllAlong, leastFromEdgeMm } from './band.ts'
import { calibratedError, calibratedRelief } from './calibrated.ts'
import { cautionsOf } from './cautions.ts'
import { edgeOf, meanReliefMm } from './edge.ts'
import { envelopeOf } from './envelope.ts'
import { type Freedom, freedomFigures, freedomOf, freePlayOf, mostTurns } from './freedom.ts'
import { advance, type GrindState, startGrind } from './grind.ts'
import { hollowOf, presentBevelDeg } from './hollow.ts'
import type { Job } from './job.ts'
import { planMotion, sweepsOf } from './motion.ts'
import type { BandReport, FreedomReport, GrindReport, LearntReport, PlanReport, Report } from './report.ts'
import { ok, type Result } from './result.ts'
import { bevelAtEdge, type SetUp, setUpOf, setUpReport } from './setUp.ts'
import { calibratedTurns, forAimReport, stopsForAim, turnsReport } from './turns.ts'
import { uncertaintyOf } from './uncertainty.ts'
import { degFromRad } from './units.ts'
import { ENGINE_VERSION } from './version.ts'
import { woodViewOf } from './woodView.ts'

/** True when the grind has done what the job's task asks: see `BandReport.stopSweep`. */
const isDone = (job: Job, state: GrindState): boolean =>
  job.aim.task === 'freshen' ? leastFromEdgeMm(state) <= job.aim.bandMm : burrAllAlong(state)

interface Ground {
  readonly state: GrindState
  readonly stopSweep: number | null
}

/** The whole grind, sweep by sweep, so that the first sweep after which to stop is known. */
const groundOf = (job: Job, freedom: Freedom): Result<Ground> => {
  const started = startGrind(job)
  if (!started.ok) return started
  const state = started.value
  const motion = planMotion(job, freedom)
  let stopSweep: number | null = null
  for (let sweep = 1; sweep <= sweepsOf(job); sweep++) {
    const ground = advance(state, motion, motion.stepsPerSweep)
    if (!ground.ok) return ground
    if (stopSweep === null && isDone(job, state)) stopSweep = sweep
  }
  return ok({ state, stopSweep })
}

const grindReport = (setUp: SetUp, state: GrindState): GrindReport => {
  const edge = edgeOf(state.uMm, state.vMm, state.throughCount)
  const recededMm = edge.edgeVMm.reduce((least, v) => Math.min(least, v))
  const bevelAngleDeg = degFromRad(bevelAtEdge(setUp, recededMm))
  return { ...edge, volumeRemovedMm3: state.volumeRemovedMm3, steps: state.step, bevelAngleDeg }
}

const bandReport = ({ state, stopSweep }: Ground): BandReport => {
  const bands = Array.from({ length: state.acrossCount }, (_, i) => bandOf(state, i))
  return {
    fromEdgeMm: bands.map((band) => band?.fromEdgeMm ?? null),
    fromHeelMm: bands.map((band) => band?.fromHeelMm ?? null),
    stopSweep,
  }
}

const freedomReport = (job: Job, freedom: Freedom, reliefMm: number): FreedomReport => {
  const forAim = stopsForAim(job, freedom, reliefMm)
  const turnsForAim = forAim && turnsReport(job, forAim)
  return {
    ...freedomFigures(freedom),
    forAim: forAim && forAimReport(forAim),
    turnsForAim,
    turnsCalibrated: calibratedTurns(job, turnsForAim),
  }
}

const learntReport = (job: Job, grind: GrindReport): LearntReport | null => {
  const { calibration } = job.fixture
  const play = freePlayOf(job)
  if (calibration === null || play === null) return null
  const freePlayMm = (play.leftMm + play.rightMm) / 2
  if (freePlayMm <= 0) return null
  const modelMm = meanReliefMm(grind)
  return {
    reliefMm: calibratedRelief(calibration, modelMm, freePlayMm),
    standardErrorMm: calibratedError(calibration, modelMm, freePlayMm),
  }
}

/** What Plan answers: the curve wanted and the stops that form it. */
export interface PlanAnswer {
  readonly plan: PlanReport
  readonly freedom: FreedomReport
}

interface Planned extends PlanAnswer {
  readonly setUp: SetUp
  readonly free: Freedom
}

/** The stages that Plan's answer and the whole report begin with. */
const planned = (job: Job): Result<Planned> => {
  const setUp = setUpOf(job)
  if (!setUp.ok) return setUp
  const plan = planOf(job)
  if (!plan.ok) return plan
  const free = freedomOf(job, setUp.value)
  if (!free.ok) return free
  const freedom = freedomReport(job, free.value, plan.value.reliefMm)
  return ok({ setUp: setUp.value, plan: plan.value, free: free.value, freedom })
}

/** Plan's answer alone, in a fifth of the time of the whole report and with the same figures. */
export const answerJob = (job: Job): Result<PlanAnswer> => {
  const found = planned(job)
  return found.ok ? ok({ plan: found.value.plan, freedom: found.value.freedom }) : found
}

/** Everything that can be told of a job, stage by stage. Pure: the same job gives the same report to the byte on every host. */
export const solveJob = (job: Job): Result<Report> => {
  const found = planned(job)
  if (!found.ok) return found
  const { setUp, plan, free, freedom } = found.value
  const ground = groundOf(job, free)
  if (!ground.ok) return ground
  const { bevelRad, wheelRadiusMm, otherBevelRad } = setUp
  const currentBevelDeg = presentBevelDeg(job, setUp)
  const grind = grindReport(setUp, ground.value.state)
  const findings = {
    setUp: setUpReport(job, setUp),
    hollow: hollowOf(wheelRadiusMm, bevelRad, job.blade.thicknessMm),
    plan,
    freedom,
    envelope: envelopeOf(job, setUp, free),
    grind,
    band: bandReport(ground.value),
    learnt: learntReport(job, grind),
    woodView: woodViewOf(job, grind, bevelRad),
    uncertainty: uncertaintyOf(job, setUp),
    job: { ...job, blade: { ...job.blade, currentBevelDeg } },
  }
  const otherBevelDeg = otherBevelRad === null ? null : degFromRad(otherBevelRad)
  const { job: whole, ...figures } = findings
  const cautions = cautionsOf(findings, mostTurns(job), otherBevelDeg)
  return ok({ ...figures, cautions, engineVersion: ENGINE_VERSION, job: whole })
}
