import fc from 'fast-check'
import { expect, test } from 'vitest'
import { reliefOf } from '../../geometry/edge.ts'
import { freedomOf } from '../../geometry/freedom.ts'
import { advance, type GrindState, startGrind } from '../../geometry/grind.ts'
import { pathAt, planMotion } from '../../geometry/motion.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { createGrindLoop } from '../../renderer/worker/grindLoop.ts'
import { createLiveGrind, type LiveGrind } from '../../renderer/worker/liveGrind.ts'
import type { FromWorker } from '../../renderer/worker/protocol.ts'
import type { SolverPort } from '../../renderer/worker/spawn.ts'
import { jobOf, STEPS, SWEEPS } from './loopBench.ts'

const job = jobOf()

/** A window and its worker in one thread, with a clock that goes when it is told to. */
const together = () => {
  let clockMs = 0
  const timers: (() => void)[] = []
  const port: SolverPort = { onmessage: null, onerror: null, terminate: () => undefined, postMessage: () => undefined }
  const loop = createGrindLoop({
    post: (data: FromWorker) => port.onmessage?.({ data } as MessageEvent<FromWorker>),
    nowMs: () => clockMs,
    after: (_, work) => timers.push(work),
  })
  port.postMessage = (message) => loop.take(message as Parameters<typeof loop.take>[0])
  return {
    live: createLiveGrind(() => port),
    /** So much time, in pieces of `pieceMs`, a slice of work after each. */
    pass: (ms: number, pieceMs: number): void => {
      for (let gone = 0; gone < ms; gone += pieceMs) {
        clockMs += pieceMs
        timers.shift()?.()
      }
    },
    settle: (): void => {
      for (let k = 0; k < 5000 && timers.length > 0; k++) timers.shift()?.()
    },
  }
}

/** The moment by the engine alone, from the start, along the path that was gone. */
const known = new Map<string, GrindState>()
const stateAt = (step: number, made: LiveGrind['handMade']): GrindState => {
  const key = `${step} ${made ? [made.fromStep, ...made.path].join() : ''}`
  const before = known.get(key)
  if (before) return before
  const [state, setUp] = [startGrind(job), setUpOf(job)]
  const freedom = setUp.ok ? freedomOf(job, setUp.value) : setUp
  if (!state.ok || !freedom.ok) throw new Error('the job of this test can be ground')
  const planned = planMotion(job, freedom.value)
  const path = made
    ? Float64Array.from([...Array.from({ length: made.fromStep }, (_, k) => pathAt(planned, k)), ...made.path])
    : planned.path
  if (!advance(state.value, { ...planned, path }, step).ok) throw new Error('the path of this test can be ground')
  known.set(key, state.value)
  return state.value
}

/** Whatever was done before, what is shown is the one moment that it says it is. */
const expectInStep = (live: LiveGrind): void => {
  const { latest: frame, handMade, history, events } = live
  if (!frame) throw new Error('no moment is shown')
  expect(frame.playing || frame.held).toBe(false)
  expect(Number.isInteger(frame.step)).toBe(true)
  expect(frame.sweep).toBe(frame.step / STEPS)
  expect(frame.step).toBeLessThanOrEqual(frame.lastStep)
  expect(frame.handFromStep ?? null).toBe(handMade?.fromStep ?? null)
  const state = stateAt(frame.step, handMade)
  const relief = reliefOf(state.vMm, state.throughCount)
  expect([...frame.vMm]).toEqual([...state.vMm])
  expect([...frame.pressureNPerMm]).toEqual([...state.pressureNPerMm])
  expect([frame.reliefLeftMm, frame.reliefRightMm]).toEqual([relief.leftMm, relief.rightMm])
  expect(frame.bearing).toBe(state.bearing)
  for (const key of ['yawRad', 'tiltRad', 'traverseMm', 'loadPlaceMm'] as const)
    expect(frame[key], key).toBeCloseTo(state[key], 12)
  expect(history).toHaveLength(Math.floor(frame.lastStep / STEPS) + 1)
  for (const sweep of [1, history.length - 1]) {
    const row = history[sweep]
    if (!row) continue
    const then = stateAt(sweep * STEPS, handMade)
    expect(row.reliefLeftMm).toBe(reliefOf(then.vMm, then.throughCount).leftMm)
  }
  expect(events.every(({ step }) => step <= frame.lastStep)).toBe(true)
  expect(new Set(events.map(({ kind }) => kind)).size).toBe(events.length)
}

const share = fc.double({ min: -1, max: 1, noNaN: true })
const ms = fc.integer({ min: 0, max: 900 })
const speed = fc.constantFrom(1 / 8, 1 / 4, 1, 4, 16)
const to = fc.integer({ min: 0, max: STEPS * SWEEPS })
const deed = fc.oneof(
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('play' as const), speed, ms }) },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('seek' as const), to }) },
  {
    weight: 2,
    arbitrary: fc.record({ kind: fc.constant('step' as const), by: fc.constantFrom(1, -1, STEPS, -STEPS) }),
  },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('pause' as const) }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('hold' as const), share, ms }) },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('press' as const), share, steps: fc.integer({ min: 1, max: 5 }) }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('again' as const) }) },
)
type Deed = typeof deed extends fc.Arbitrary<infer D> ? D : never

const act = ({ live, pass, settle }: ReturnType<typeof together>, done: Deed): void => {
  const at = live.latest?.step ?? 0
  const last = live.latest?.lastStep ?? 0
  if (done.kind === 'play') {
    live.play(done.speed)
    pass(done.ms, 7)
  } else if (done.kind === 'seek') live.seek(Math.min(done.to, last))
  else if (done.kind === 'step') live.seek(Math.min(Math.max(at + done.by, 0), last))
  else if (done.kind === 'pause') live.pause()
  else if (done.kind === 'hold') {
    live.hold(done.share)
    pass(done.ms, 7)
    live.release()
  } else if (done.kind === 'press') live.press(done.share, done.steps)
  else {
    live.start(job)
    settle()
  }
}

test('played, paused, sought, stepped, swept by hand and begun again at random, every view has the same moment', () => {
  fc.assert(
    fc.property(fc.array(deed, { minLength: 1, maxLength: 12 }), fc.integer({ min: 0, max: 40 }), (deeds, restMs) => {
      const all = together()
      all.live.start(job)
      all.pass(restMs, 3)
      let told = 0
      all.live.subscribe('frame', () => told++)
      for (const done of deeds) act(all, done)
      all.live.pause()
      all.settle()
      expect(told).toBeGreaterThan(0)
      expectInStep(all.live)
      // A seek leads where it was told, and back, wherever it comes from.
      const { step, lastStep } = all.live.latest as { step: number; lastStep: number }
      for (const there of [Math.floor(lastStep / 2), step]) {
        all.live.seek(there)
        all.settle()
        expect(all.live.latest?.step).toBe(there)
        expectInStep(all.live)
      }
    }),
    { numRuns: 30 },
  )
})
