import { expect, test } from 'vitest'
import { placeMarks, stripEvents } from '../../renderer/grind/strip/stripEvents.ts'
import type { RunEvent } from '../../renderer/worker/runEvents.ts'
import { jobOf, STEPS } from './loopBench.ts'

const noted: readonly RunEvent[] = [
  { kind: 'firstTouch', step: 1 },
  { kind: 'edgeReached', step: 1 },
  { kind: 'burrAllAlong', step: 30 },
]
const rows = [0, 0.1, 0.2, 0.3].map((mm) => ({ reliefLeftMm: mm, reliefRightMm: mm + 0.02, inkLeftShare: 1 }))

test('the wanted relief is reached at the first sweep whose mean is there', () => {
  const found = stripEvents(noted, rows, 0.2, jobOf())
  expect(found).toContainEqual({ kind: 'reliefReached', step: 2 * STEPS })
  expect(found.map(({ step }) => step)).toEqual([1, 2 * STEPS, 30])
  expect(stripEvents(noted, rows, 0.5, jobOf()).some(({ kind }) => kind === 'reliefReached')).toBe(false)
  expect(stripEvents(noted, rows, null, jobOf()).some(({ kind }) => kind === 'reliefReached')).toBe(false)
})

test('reshaping ends with the burr, freshening where the cut reaches the edge', () => {
  const kinds = (task: 'reshape' | 'freshen') =>
    stripEvents(noted, rows, null, { ...jobOf(), aim: { ...jobOf().aim, task } }).map(({ kind }) => kind)
  expect(kinds('reshape')).toEqual(['firstTouch', 'burrAllAlong'])
  expect(kinds('freshen')).toEqual(['firstTouch', 'edgeReached'])
})

test('words never lie on one another, and a dot without room keeps its place', () => {
  const events = Array.from({ length: 9 }, (_, k) => ({
    kind: 'firstTouch' as const,
    step: 10 * k,
    text: 'ink gone left',
  }))
  const marks = placeMarks(events, (step) => step * 4, 400, 15)
  expect(marks.map(({ xPx }) => xPx)).toEqual(events.map(({ step }) => step * 4))
  for (const row of [0, 1]) {
    const starts = marks.flatMap(({ row: own, textPx }) => (own === row && textPx !== null ? [textPx] : []))
    expect(starts.length).toBeGreaterThan(1)
    for (let k = 1; k < starts.length; k++)
      expect((starts[k] as number) - (starts[k - 1] as number)).toBeGreaterThan(100)
  }
  expect(marks.some(({ textPx }) => textPx === null)).toBe(true)
})

test('at the end of the run the words before give way, so that each mark has its own', () => {
  const events = [250, 252, 254].map((step) => ({ kind: 'firstTouch' as const, step, text: 'ink gone left' }))
  const marks = placeMarks(events, (step) => step, 400, 15)
  expect(marks.map(({ row }) => row)).toEqual([0, 1, 0])
  const longPx = (marks[2]?.textPx ?? 0) - (marks[0]?.textPx ?? 0)
  expect(longPx).toBeGreaterThan(100)
  expect((marks[2]?.textPx ?? Number.NaN) + longPx).toBeLessThanOrEqual(414)
})
