import { expect, test } from 'vitest'
import { freedomOf } from '../../geometry/freedom.ts'
import type { Job } from '../../geometry/job.ts'
import { jobSchema } from '../../geometry/job.ts'
import { pathAt, planMotion } from '../../geometry/motion.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { handSweeps, withHandMotion } from '../../renderer/grind/handMotion.ts'
import { jobOf, STEPS, SWEEPS } from './loopBench.ts'

const made = (steps: number, fromStep = 0) => ({
  fromStep,
  path: Float64Array.from({ length: steps }, (_, k) => Math.sin(k / 3)),
})

const motionOf = (job: Job) => {
  const setUp = setUpOf(job)
  if (!setUp.ok) throw new Error('the job of this test stands')
  const freedom = freedomOf(job, setUp.value)
  if (!freedom.ok) throw new Error('the job of this test has stops')
  return planMotion(job, freedom.value)
}

test('a grind made by hand from the start becomes a job that walks the same path, step by step', () => {
  const hand = made(3 * STEPS + 5)
  const job = withHandMotion(jobOf(), hand) as Job
  expect(jobSchema.parse(job)).toEqual(job)
  expect(job.motion).toMatchObject({ path: 'recorded', recordedSweeps: 3, sweeps: 3 })
  const motion = motionOf(job)
  for (let step = 0; step < 3 * STEPS; step++) expect(pathAt(motion, step)).toBe(hand.path[step])
})

test('taken over later, the hand gives the path and the plan keeps its sweeps', () => {
  const job = withHandMotion(jobOf(), made(2 * STEPS, STEPS)) as Job
  expect(job.motion).toMatchObject({ recordedSweeps: 2, sweeps: SWEEPS })
})

test('less than a sweep is nothing to keep, and no more than a job can hold is kept', () => {
  expect(withHandMotion(jobOf(), made(STEPS - 1))).toBeNull()
  expect(handSweeps(jobOf(), made(300 * STEPS))).toBe(200)
})
