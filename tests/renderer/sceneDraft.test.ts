import { Group } from 'three'
import { expect, test } from 'vitest'
import { setUpOf } from '../../geometry/setUp.ts'
import { withBar, withOffset, withProjection } from '../../renderer/grind/handles/held.ts'
import { moveParts } from '../../renderer/scene/draft.ts'
import { barAxisMm, machineFigures } from '../../renderer/scene/placement.ts'
import { jobOf } from './loopBench.ts'

const figuresOf = (job: ReturnType<typeof jobOf>) => {
  const setUp = setUpOf(job)
  if (!setUp.ok) throw new Error(setUp.problems[0]?.code)
  return machineFigures(job, setUp.value)
}

const moved = (change: (job: ReturnType<typeof jobOf>) => ReturnType<typeof jobOf>) => {
  const job = withOffset(jobOf(), 30)
  const [built, drawn] = [figuresOf(job), figuresOf(change(job))]
  const [bar, fixed, moving] = [new Group(), new Group(), new Group()]
  moveParts({ bar, fixture: [fixed, moving] }, built, drawn)
  return { built, drawn, bar, fixed, moving }
}

test('a bar lifted by hand is drawn where its axis then is, the fixture where it was on the blade', () => {
  const { built, drawn, bar, fixed } = moved((job) => withBar(job, 'gap', 90))
  expect(barAxisMm(built)[0] + bar.position.y).toBeCloseTo(barAxisMm(drawn)[0], 9)
  expect(bar.position.y).not.toBe(0)
  expect(bar.position.z).toBe(0)
  // The projection becomes a given one, to a hundredth.
  expect(Math.abs(fixed.position.y)).toBeLessThan(0.01)
})

test('a bar shifted by hand is drawn nearer to the operator and as far from the axle as before', () => {
  const { built, drawn, bar } = moved((job) => withOffset(job, 37))
  expect(bar.position.z).toBe(7)
  const [y, z] = barAxisMm(built)
  expect(Math.hypot(y + bar.position.y, z + bar.position.z)).toBeCloseTo(drawn.barDistanceMm, 9)
})

test('a blade slid out has both parts of the fixture further up it', () => {
  const { built, drawn, fixed, moving } = moved((job) => withProjection(job, 133.5))
  expect(built.projectionMm + fixed.position.y).toBe(133.5)
  expect(moving.position.y).toBe(fixed.position.y)
  expect(drawn.projectionMm).toBe(133.5)
})
