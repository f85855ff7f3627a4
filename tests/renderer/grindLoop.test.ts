import { expect, test } from 'vitest'
import { doAside } from '../../renderer/worker/aside.ts'
import { createLiveGrind } from '../../renderer/worker/liveGrind.ts'
import type { Frame, FromWorker, ToWorker } from '../../renderer/worker/protocol.ts'
import { createSolver } from '../../renderer/worker/solver.ts'
import type { SolverPort } from '../../renderer/worker/spawn.ts'

import { bench, giveBack, jobOf, STEPS, SWEEPS } from './loopBench.ts'

test('a run starts at its first moment and works its whole history out', () => {
  const b = bench()
  b.take({ type: 'start', run: 3, job: jobOf() })
  b.runOut()
  expect(b.lastFrame()).toMatchObject({ run: 3, step: 0, sweep: 0, playing: false, reliefLeftMm: 0, inkLeftShare: 1 })
  const rows = b.posted.flatMap((message) => (message.type === 'history' ? message.rows : []))
  expect(rows).toHaveLength(SWEEPS + 1)
  expect(rows.at(-1)?.reliefLeftMm).toBeGreaterThan(rows[1]?.reliefLeftMm as number)
  expect(rows.at(-1)?.inkLeftShare).toBeLessThan(1)
})

test('seeking back gives the earlier moment to the bit, and going on again the later one', () => {
  const b = bench()
  b.take({ type: 'start', run: 1, job: jobOf() })
  b.runOut()
  const momentAt = (step: number): Frame => {
    giveBack(b)
    b.take({ type: 'seek', step })
    b.runOut()
    const frame = b.lastFrame()
    expect(frame.step).toBe(step)
    return { ...frame, vMm: frame.vMm.slice(), pressureNPerMm: frame.pressureNPerMm.slice() }
  }
  const early = momentAt(13)
  const late = momentAt(41)
  expect(late.reliefRightMm).toBeGreaterThan(early.reliefRightMm)
  expect(momentAt(13)).toEqual(early)
  expect(momentAt(41)).toEqual(late)
})

test('a seek before anything is worked out comes to the same moment', () => {
  const [a, b] = [bench(), bench()]
  a.take({ type: 'start', run: 1, job: jobOf() })
  a.take({ type: 'seek', step: 30 })
  a.runOut()
  b.take({ type: 'start', run: 1, job: jobOf() })
  b.runOut()
  giveBack(b)
  b.take({ type: 'seek', step: 30 })
  b.runOut()
  expect(a.lastFrame().vMm).toEqual(b.lastFrame().vMm)
})

test('play keeps the speed asked for, and pauses at the end', () => {
  const b = bench()
  b.take({ type: 'start', run: 1, job: jobOf() })
  b.runOut()
  giveBack(b)
  b.take({ type: 'play', sweepsPerSecond: 2 })
  b.pass(1000)
  // Two sweeps a second for one second; the frame shows the last whole piece of time.
  expect(b.lastFrame().sweep).toBeCloseTo(2, 1)
  expect(b.lastFrame().playing).toBe(true)
  b.pass(3000)
  expect(b.lastFrame()).toMatchObject({ step: SWEEPS * STEPS, sweep: SWEEPS, playing: false })
  b.runOut()
  expect(b.timers, 'at rest').toHaveLength(0)
})

test('pause lands on a whole step', () => {
  const b = bench()
  b.take({ type: 'start', run: 1, job: jobOf() })
  b.runOut()
  giveBack(b)
  b.take({ type: 'play', sweepsPerSecond: 1 })
  b.pass(330)
  b.take({ type: 'pause' })
  b.runOut()
  const { step, sweep, playing } = b.lastFrame()
  expect({ sweep, playing }).toEqual({ sweep: step / STEPS, playing: false })
  expect(step).toBe(3)
})

test('without arrays in hand no frame is made, and the next one is as new as can be', () => {
  const b = bench()
  b.take({ type: 'start', run: 1, job: jobOf() })
  b.runOut()
  for (const step of [5, 6, 7, 8]) {
    b.take({ type: 'seek', step })
    b.runOut()
  }
  expect(b.frames().map(({ step }) => step)).toEqual([0, 5, 6])
  giveBack(b)
  b.runOut()
  expect(b.lastFrame().step).toBe(8)
})

test('a newer run supersedes the older', () => {
  const b = bench()
  b.take({ type: 'start', run: 1, job: jobOf() })
  b.take({ type: 'start', run: 2, job: jobOf({ sweeps: 2 }) })
  b.runOut()
  expect(new Set(b.frames().map(({ run }) => run))).toEqual(new Set([2]))
})

test('a job that cannot be set up is told, and nothing runs', () => {
  const b = bench()
  const job = jobOf()
  b.take({ type: 'start', run: 1, job: { ...job, fixture: { ...job.fixture, screwPitchMm: null } } })
  b.runOut()
  expect(b.posted.map(({ type }) => type)).toEqual(['trouble'])
})

/** A double of the worker: keeps what it is told, says what the test says. */
const port = (): SolverPort & { readonly told: ToWorker[]; ended: boolean; say(message: FromWorker): void } => ({
  told: [],
  ended: false,
  onmessage: null,
  onerror: null,
  postMessage(message) {
    this.told.push(message)
  },
  terminate() {
    this.ended = true
  },
  say(message) {
    this.onmessage?.({ data: message } as MessageEvent<FromWorker>)
  },
})

test('the window gives arrays back when a newer frame is there, and drops frames of an older run', () => {
  const worker = port()
  const live = createLiveGrind(() => worker)
  const frame = (run: number, step: number): Frame =>
    ({ run, step, vMm: new Float64Array(2), pressureNPerMm: new Float64Array(2) }) as unknown as Frame
  expect(live.start(jobOf())).toBe(1)
  worker.say({ type: 'frame', frame: frame(1, 0) })
  expect(worker.told.filter(({ type }) => type === 'give')).toHaveLength(0)
  worker.say({ type: 'frame', frame: frame(1, 1) })
  expect(worker.told.filter(({ type }) => type === 'give')).toHaveLength(1)
  live.start(jobOf())
  worker.say({ type: 'frame', frame: frame(1, 2) })
  expect(live.latest?.step).toBe(1)
})

test('a newer job to solve supersedes the older one, whose worker ends', async () => {
  const ports = [port(), port()]
  let made = 0
  const solver = createSolver(() => ports[made++] as SolverPort)
  const older = solver.solve(jobOf())
  const newer = solver.solve(jobOf({ sweeps: 3 }))
  expect(ports[0]?.ended).toBe(true)
  ports[1]?.say({ type: 'solved', id: 2, result: { ok: true, value: {} as never } })
  expect(await older).toEqual({ ok: false, problems: [{ code: 'superseded', path: '', params: {} }] })
  expect((await newer).ok).toBe(true)
})

test('the answer is told before the report, and only to the job it is of', async () => {
  const worker = port()
  const solver = createSolver(() => worker)
  const told: unknown[] = []
  const solved = solver.solve(jobOf(), (answer) => told.push(answer))
  worker.say({ type: 'answered', id: 7, answer: { of: 'another' } as never })
  worker.say({ type: 'answered', id: 1, answer: { of: 'this' } as never })
  expect(told).toEqual([{ of: 'this' }])
  worker.say({ type: 'solved', id: 1, result: { ok: true, value: {} as never } })
  expect((await solved).ok).toBe(true)
})

test('work done aside is told on the way, ends its worker, and can be given up', async () => {
  const [busy, idle] = [port(), port()]
  const shares: number[] = []
  const work = doAside(
    { type: 'diagnose', job: jobOf() },
    (said) => {
      if (said.type === 'scheduling') shares.push(said.share)
      return said.type === 'diagnosed' ? said.signatures : undefined
    },
    () => busy,
  )
  busy.say({ type: 'scheduling', share: 0.5 })
  busy.say({ type: 'diagnosed', signatures: [] })
  expect([await work.result, shares, busy.ended]).toEqual([[], [0.5], true])
  const given = doAside(
    { type: 'diagnose', job: jobOf() },
    () => undefined,
    () => idle,
  )
  given.giveUp()
  expect([await given.result, idle.ended]).toEqual([null, true])
})

test('a lost worker is a problem, and the next job gets a fresh one', async () => {
  const ports = [port(), port()]
  let made = 0
  const solver = createSolver(() => ports[made++] as SolverPort)
  const lost = solver.solve(jobOf())
  ports[0]?.onerror?.({} as ErrorEvent)
  expect(await lost).toMatchObject({ ok: false, problems: [{ code: 'solverLost' }] })
  void solver.solve(jobOf())
  expect(ports[1]?.told).toHaveLength(1)
})
