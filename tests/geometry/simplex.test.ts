import { expect, it } from 'vitest'
import { leastOf } from '../../geometry/simplex.ts'

const x = (at: readonly number[], k: number): number => at[k] as number

it("finds the floor of Rosenbrock's bent valley (1960): 100 (y - x^2)^2 + (1 - x)^2 is least at 1, 1", () => {
  const valley = (at: readonly number[]) => 100 * (x(at, 1) - x(at, 0) ** 2) ** 2 + (1 - x(at, 0)) ** 2
  const { at, value } = leastOf(valley, [-1.2, 1], { steps: [0.5, 0.5], mostTrials: 400, tolerance: 1e-16 })
  expect(x(at, 0)).toBeCloseTo(1, 6)
  expect(x(at, 1)).toBeCloseTo(1, 6)
  expect(value).toBeLessThan(1e-12)
})

it('finds the floor of a figure with kinks, as a greatest deviation has', () => {
  const kinked = (at: readonly number[]) =>
    Math.max(Math.abs(x(at, 0) - 3), 2 * Math.abs(x(at, 1) + 1), Math.abs(x(at, 2)))
  const { value } = leastOf(kinked, [0, 0, 1], { steps: [1, 1, 1], mostTrials: 600, tolerance: 1e-9 })
  expect(value).toBeLessThan(0.01)
})

it('keeps to its trials, stops when told and is never worse than its start', () => {
  let trials = 0
  const count = (at: readonly number[]) => {
    trials++
    return x(at, 0) ** 2
  }
  const { value } = leastOf(count, [5], { steps: [1], mostTrials: 10, tolerance: 0 })
  expect(value).toBeLessThan(25)
  expect(trials).toBeLessThanOrEqual(12)
  trials = 0
  const stopped = leastOf(count, [5], { steps: [1], mostTrials: 100, tolerance: 0, isStopped: () => true })
  expect(trials).toBe(2)
  expect(stopped.value).toBe(25)
})

it('walks round what cannot be measured', () => {
  const walled = (at: readonly number[]) => (x(at, 0) < 0 ? Number.POSITIVE_INFINITY : (x(at, 0) - 0.1) ** 2)
  const { at } = leastOf(walled, [3], { steps: [-4], mostTrials: 100, tolerance: 1e-14 })
  expect(x(at, 0)).toBeCloseTo(0.1, 5)
})
