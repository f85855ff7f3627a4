import { freedomOf } from './freedom.ts'
import { advance, startGrind } from './grind.ts'
import type { Job } from './job.ts'
import { type BladeField, type BladeMesh, bladeMesh } from './mesh.ts'
import { planMotion, sweepsOf } from './motion.ts'
import { ok, type Result } from './result.ts'
import { setUpOf } from './setUp.ts'

/** Plain blade kept above the highest heel, enough to be held by (mm). */
const SHANK_MM = 20

/** The lower end of a blade at some moment: its field, and enough plain blade above the highest heel to be held by. */
export const solidOf = (field: BladeField, vMm: Float64Array): BladeMesh =>
  bladeMesh(field, vMm, vMm.reduce((most, v) => Math.max(most, v)) + SHANK_MM)

/** The lower end of the blade as a job leaves it: a closed surface for solid modellers. */
export const groundBlade = (job: Job): Result<BladeMesh> => {
  const setUp = setUpOf(job)
  if (!setUp.ok) return setUp
  const freedom = freedomOf(job, setUp.value)
  if (!freedom.ok) return freedom
  const started = startGrind(job)
  if (!started.ok) return started
  const ground = advance(started.value, planMotion(job, freedom.value), sweepsOf(job) * job.motion.stepsPerSweep)
  return ground.ok ? ok(solidOf(ground.value, ground.value.vMm)) : ground
}
