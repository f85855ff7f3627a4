import { expect, test } from 'vitest'
import { freedomOf } from '../../geometry/freedom.ts'
import { advance, startGrind } from '../../geometry/grind.ts'
import { planMotion } from '../../geometry/motion.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { createLiveGrind } from '../../renderer/worker/liveGrind.ts'
import type { FromWorker } from '../../renderer/worker/protocol.ts'
import type { SolverPort } from '../../renderer/worker/spawn.ts'
import { bench, giveBack, jobOf, STEPS, SWEEPS } from './loopBench.ts'

const started = (job = jobOf()) => {
  const b = bench()
  b.take({ type: 'start', run: 1, job })
  b.runOut()
  giveBack(b)
  return b
}

const handMade = (posted: readonly FromWorker[]): Float64Array =>
  posted.findLast((message) => message.type === 'handMade')?.path as Float64Array

test('while the hand holds, a sweep of steel is ground in a second, and letting go pauses', () => {
  const b = started()
  b.take({ type: 'hold', share: -1 })
  b.pass(1010)
  expect(b.lastFrame()).toMatchObject({ step: STEPS, held: true, playing: true, handFromStep: 0, lastStep: STEPS })
  expect(b.lastFrame().reliefLeftMm).toBeGreaterThan(b.lastFrame().reliefRightMm)
  b.take({ type: 'release' })
  b.pass(500)
  expect(b.lastFrame()).toMatchObject({ step: STEPS, held: false, playing: false })
})

const tellsOf = (b: ReturnType<typeof started>) => {
  const { step, lastStep, handFromStep, vMm } = b.lastFrame()
  return { step, lastStep, handFromStep, vMm: [...vMm] }
}
const historyOf = (posted: readonly FromWorker[]) =>
  posted.reduce<readonly unknown[]>(
    (rows, message) => (message.type === 'history' ? [...rows.slice(0, message.from), ...message.rows] : rows),
    [],
  )

test('given up, the run is as it was: planned, or as a hand had made it before', () => {
  const b = started()
  const planned = historyOf(b.posted)
  const holdAndGiveUp = () => {
    const before = tellsOf(b)
    b.take({ type: 'hold', share: -0.9 })
    b.pass(1700)
    expect(b.lastFrame().step).toBeGreaterThan(before.step)
    giveBack(b)
    b.take({ type: 'giveUp' })
    b.runOut()
    expect(tellsOf(b)).toEqual(before)
    giveBack(b)
  }
  b.take({ type: 'seek', step: STEPS + 1 })
  b.runOut()
  giveBack(b)
  holdAndGiveUp()
  expect(historyOf(b.posted)).toEqual(planned)
  expect(b.posted.findLast((message) => message.type === 'events')).toEqual(
    started().posted.findLast((message) => message.type === 'events'),
  )

  b.take({ type: 'press', share: 0.5, steps: 2 * STEPS })
  b.runOut()
  giveBack(b)
  const byHand = [...handMade(b.posted)]
  holdAndGiveUp()
  b.take({ type: 'seek', step: STEPS + 3 })
  b.runOut()
  giveBack(b)
  holdAndGiveUp()
  expect([...handMade(b.posted)]).toEqual(byHand)
})

test('a hand that has made no step yet gives up nothing', () => {
  const b = started()
  b.take({ type: 'hold', share: 0.4 })
  b.take({ type: 'giveUp' })
  b.runOut()
  expect(b.lastFrame()).toMatchObject({ step: 0, held: false, handFromStep: null })
})

test('steps between two places of the hand go evenly from one to the other', () => {
  const b = started()
  b.take({ type: 'hold', share: 0 })
  b.take({ type: 'hold', share: 0.8 })
  b.pass(250, 250)
  b.take({ type: 'pause' })
  b.runOut()
  expect([...handMade(b.posted)]).toEqual([0.4, 0.8])
})

test('what the hand made is ground as the engine grinds that path, to the bit, and can be gone back in', () => {
  const b = started()
  b.take({ type: 'seek', step: STEPS })
  b.runOut()
  giveBack(b)
  b.take({ type: 'hold', share: -0.9 })
  b.pass(700)
  b.take({ type: 'hold', share: 0.6 })
  b.pass(800)
  b.take({ type: 'release' })
  b.runOut()
  const end = b.lastFrame()
  const field = [...end.vMm]
  giveBack(b)
  const byHand = handMade(b.posted)
  expect(byHand).toHaveLength(end.step - STEPS)

  const job = jobOf()
  const state = startGrind(job)
  const setUp = setUpOf(job)
  if (!state.ok || !setUp.ok) throw new Error('the job of this test can be ground')
  const freedom = freedomOf(job, setUp.value)
  if (!freedom.ok) throw new Error('the job of this test has stops')
  const motion = planMotion(job, freedom.value)
  const path = Float64Array.from([...motion.path.slice(0, STEPS), ...byHand])
  expect(advance(state.value, { ...motion, path }, end.step).ok).toBe(true)
  expect(field).toEqual([...state.value.vMm])

  for (const step of [2, end.step]) {
    b.take({ type: 'seek', step })
    b.runOut()
    if (step === 2) giveBack(b)
  }
  expect([...b.lastFrame().vMm]).toEqual(field)
})

test('what was planned after the moment taken in hand is void: its sweeps and its events', () => {
  const b = started(jobOf({ stopTurnsLeft: 0.1, stopTurnsRight: 0.1 }))
  const kinds = () => b.posted.findLast((message) => message.type === 'events')?.events.map(({ kind }) => kind) ?? []
  expect(kinds()).toContain('stopRight')
  b.take({ type: 'seek', step: 0 })
  b.runOut()
  giveBack(b)
  const before = b.posted.length
  b.take({ type: 'press', share: 0, steps: 2 * STEPS })
  b.runOut()
  const told = b.posted.slice(before).flatMap((message) => (message.type === 'history' ? [message] : []))
  expect(told[0]).toMatchObject({ from: 1, rows: [] })
  expect(told.flatMap(({ rows }) => rows)).toHaveLength(2)
  expect(b.lastFrame()).toMatchObject({ step: 2 * STEPS, lastStep: 2 * STEPS, handFromStep: 0, held: false })
  expect(kinds()).toContain('firstTouch')
  expect(kinds()).not.toContain('stopRight')
  expect(kinds()).not.toContain('stopLeft')
})

test('presses that follow each other faster than they are ground all count', () => {
  const b = started()
  for (const share of [0.2, 0.4, 0.6]) b.take({ type: 'press', share, steps: 1 })
  b.runOut()
  expect([...handMade(b.posted)]).toEqual([0.2, 0.4, 0.6])
  expect(b.lastFrame()).toMatchObject({ step: 3, lastStep: 3 })
})

test('a window that slept while the hand held makes no more than a quarter of a second of steel', () => {
  const b = started()
  b.take({ type: 'hold', share: 1 })
  b.pass(60_000, 60_000)
  b.runOut(20)
  expect(b.lastFrame().step).toBe(STEPS / 4)
})

test('events stand in the order of their steps, each once', () => {
  const b = started()
  const events = b.posted.findLast((message) => message.type === 'events')?.events ?? []
  expect(events[0]).toEqual({ kind: 'firstTouch', step: 1 })
  expect(events.map(({ step }) => step)).toEqual([...events.map(({ step }) => step)].sort((a, c) => a - c))
  expect(new Set(events.map(({ kind }) => kind)).size).toBe(events.length)
  expect(events.every(({ step }) => step > 0 && step <= SWEEPS * STEPS)).toBe(true)
})

test('the window drops what is void and knows what the hand made', () => {
  const port: SolverPort = { postMessage: () => undefined, terminate: () => undefined, onmessage: null, onerror: null }
  const live = createLiveGrind(() => port)
  const run = live.start(jobOf())
  const hear = (data: FromWorker) => port.onmessage?.({ data } as MessageEvent<FromWorker>)
  const row = { reliefLeftMm: 0, reliefRightMm: 0, inkLeftShare: 1 }
  hear({ type: 'history', run, from: 0, rows: [row, row, row, row] })
  hear({ type: 'history', run, from: 2, rows: [] })
  expect(live.history).toHaveLength(2)
  hear({ type: 'handMade', run, fromStep: 16, path: Float64Array.of(0.5) })
  expect(live.handMade).toMatchObject({ fromStep: 16, path: Float64Array.of(0.5) })
  live.start(jobOf())
  expect(live.handMade).toBeNull()
})
