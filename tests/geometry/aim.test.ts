import { expect, it } from 'vitest'
import { planOf } from '../../geometry/aim.ts'
import { exampleJob, found } from './example.ts'

const plan = (reliefMm: number) => found(planOf(exampleJob({ aim: { reliefMm } })))

it('half a millimetre on 57 mm is a radius of (28.5^2 + 0.5^2) / (2 x 0.5) = 812.5', () => {
  expect(plan(0.5).edgeRadiusMm).toBeCloseTo(812.5, 9)
})

it('a relief far below an atom is a straight edge, never a radius without end', () => {
  expect(plan(5e-324)).toEqual(plan(0))
  expect(plan(0).edgeRadiusMm).toBeNull()
  expect(Number.isFinite(plan(1e-9).edgeRadiusMm as number)).toBe(true)
})
