import { planOf } from './aim.ts'
import { cautionsOf } from './cautions.ts'
import { edgeOf } from './edge.ts'
import { envelopeOf } from './envelope.ts'
import { type Freedom, freedomFigures, freedomOf, mostTurns } from './freedom.ts'
import { advance, startGrind } from './grind.ts'
import { hollowOf } from './hollow.ts'
import type { Job } from './job.ts'
import { planMotion } from './motion.ts'
import type { GrindReport, Report } from './report.ts'
import { ok, type Result } from './result.ts'
import { setUpOf, setUpReport } from './setUp.ts'
import { turnsForAim } from './turns.ts'
import { degFromRad } from './units.ts'
import { ENGINE_VERSION } from './version.ts'
import { woodViewOf } from './woodView.ts'

const grindOf = (job: Job, freedom: Freedom): Result<GrindReport> => {
  const started = startGrind(job)
  if (!started.ok) return started
  const ground = advance(started.value, planMotion(job, freedom), job.motion.sweeps * job.motion.stepsPerSweep)
  if (!ground.ok) return ground
  const { uMm, vMm, throughCount, volumeRemovedMm3, step } = ground.value
  return ok({ ...edgeOf(uMm, vMm, throughCount), volumeRemovedMm3, steps: step })
}

/** Everything that can be told of a job, stage by stage. Pure: the same job gives the same report to the byte on every host. */
export const solveJob = (job: Job): Result<Report> => {
  const setUp = setUpOf(job)
  if (!setUp.ok) return setUp
  const plan = planOf(job)
  if (!plan.ok) return plan
  const freedom = freedomOf(job, setUp.value)
  if (!freedom.ok) return freedom
  const grind = grindOf(job, freedom.value)
  if (!grind.ok) return grind
  const { bevelRad, wheelRadiusMm, otherBevelRad } = setUp.value
  const currentBevelDeg = job.blade.currentBevelDeg ?? degFromRad(bevelRad)
  const findings = {
    setUp: setUpReport(job, setUp.value),
    hollow: hollowOf(wheelRadiusMm, bevelRad, job.blade.thicknessMm),
    plan: plan.value,
    freedom: {
      ...freedomFigures(freedom.value),
      turnsForAim: turnsForAim(job, freedom.value, plan.value.reliefMm),
      turnsCalibrated: null,
    },
    envelope: envelopeOf(job, freedom.value),
    grind: grind.value,
    woodView: woodViewOf(job, grind.value, bevelRad),
    job: { ...job, blade: { ...job.blade, currentBevelDeg } },
  }
  const otherBevelDeg = otherBevelRad === null ? null : degFromRad(otherBevelRad)
  const { job: whole, ...figures } = findings
  const cautions = cautionsOf(findings, mostTurns(job), otherBevelDeg)
  return ok({ ...figures, cautions, engineVersion: ENGINE_VERSION, job: whole })
}
