import { expect, test } from 'vitest'
import type { Job } from '../../geometry/job.ts'
import { deviationOf } from '../../renderer/grind/compare/deviation.ts'
import { keepTogether, type Pair, stepFor } from '../../renderer/grind/compare/together.ts'
import { createLiveGrind, type LiveGrind } from '../../renderer/worker/liveGrind.ts'
import type { FromWorker, RunShape, ToWorker } from '../../renderer/worker/protocol.ts'
import type { SolverPort } from '../../renderer/worker/spawn.ts'
import { bench, jobOf, STEPS, SWEEPS } from './loopBench.ts'

type GrindMessage = Exclude<ToWorker, { type: 'solve' | 'schedule' | 'diagnose' }>

/** A live grind whose worker is a real loop that works, and answers, only when the test says so. */
const grindOf = (job: Job) => {
  const loop = bench()
  let told = 0
  const port: SolverPort = {
    onmessage: null,
    onerror: null,
    postMessage: (message) => loop.take(message as GrindMessage),
    terminate: () => undefined,
  }
  const live = createLiveGrind(() => port)
  live.start(job)
  const say = (): void => {
    while (told < loop.posted.length) {
      const data = loop.posted[told++] as FromWorker
      port.onmessage?.({ data } as MessageEvent<FromWorker>)
    }
  }
  /** Works everything out and tells it, until nothing more comes of it. */
  const settle = (): void => {
    do {
      loop.runOut()
      say()
    } while (loop.timers.length > 0 || told < loop.posted.length)
  }
  return { live, settle, work: () => loop.runOut() }
}

const sideOf = (live: LiveGrind) => ({ live, shape: live.shape as RunShape })

const twoGrinds = (ownJob: Job, otherJob: Job, fixedStep: number | null = null) => {
  const [own, other] = [grindOf(ownJob), grindOf(otherJob)]
  own.settle()
  other.settle()
  const together = keepTogether(sideOf(own.live), sideOf(other.live), fixedStep)
  const pairs: Pair[] = []
  together.subscribe(() => pairs.push(together.pair as Pair))
  const seek = (step: number): void => {
    own.live.seek(step)
    own.settle()
    other.settle()
  }
  return { own, other, together, pairs, seek }
}

const steps = ({ own, other }: Pair) => [own.step, other.step]

test('the other stands where the own one is, forwards and back', () => {
  const { together, seek } = twoGrinds(jobOf(), jobOf({ stopTurnsLeft: 1 }))
  for (const step of [13, 41, 5, 0, SWEEPS * STEPS]) {
    seek(step)
    expect(steps(together.pair as Pair)).toEqual([step, step])
  }
  const { own, other } = together.pair as Pair
  expect(own.reliefLeftMm).toBeGreaterThan(other.reliefLeftMm)
})

test('runs cut into other steps meet at the same sweep', () => {
  expect(stepFor(5 * 8, 8, 20)).toBe(5 * 20)
  const { together, seek } = twoGrinds(jobOf(), jobOf({ stepsPerSweep: 20 }))
  seek(3 * STEPS)
  expect(together.pair).toMatchObject({ own: { sweep: 3 }, other: { step: 60, sweep: 3 } })
})

test('a shorter run stands at its end and says so, until the own one comes back', () => {
  const { together, seek } = twoGrinds(jobOf(), jobOf({ sweeps: 2 }))
  seek(5 * STEPS)
  expect(together.pair).toMatchObject({ own: { sweep: 5 }, other: { sweep: 2 }, shorter: true })
  seek(STEPS)
  expect(together.pair).toMatchObject({ own: { sweep: 1 }, other: { sweep: 1 }, shorter: false })
})

test('start and end stay where they are while the own one moves', () => {
  const start = twoGrinds(jobOf(), jobOf(), 0)
  start.seek(20)
  expect(steps(start.together.pair as Pair)).toEqual([20, 0])
  const end = twoGrinds(jobOf(), jobOf(), Number.POSITIVE_INFINITY)
  end.other.settle()
  end.seek(20)
  expect(end.together.pair).toMatchObject({ own: { step: 20 }, other: { step: SWEEPS * STEPS }, shorter: false })
})

test('what is told together belongs together, however late the other answers', () => {
  const { own, other, pairs } = twoGrinds(jobOf(), jobOf({ stopTurnsLeft: 1 }))
  for (const step of [10, 20, 30]) {
    own.live.seek(step)
    own.settle()
  }
  expect(pairs, 'nothing while the other has not answered').toEqual([])
  other.settle()
  expect(pairs.map(steps)).toEqual([
    [10, 10],
    [30, 30],
  ])
})

test('a moment of the other that was not asked for is paired with nothing', () => {
  const { own, other, pairs } = twoGrinds(jobOf(), jobOf())
  other.live.seek(3)
  other.work()
  own.live.seek(20)
  own.settle()
  other.settle()
  expect(pairs.map(steps)).toEqual([[20, 20]])
})

test('the same job is the same at every moment', () => {
  const { together, seek } = twoGrinds(jobOf(), jobOf())
  for (const step of [7, 33]) {
    seek(step)
    const { own, other, deviation } = together.pair as Pair
    expect(other).toEqual(own)
    expect(deviation.byMm).toBe(0)
  }
})

test('put away it asks for nothing more', () => {
  const { own, other, together, pairs } = twoGrinds(jobOf(), jobOf())
  together.end()
  own.live.seek(12)
  own.settle()
  other.settle()
  expect([other.live.latest?.step, pairs.length]).toEqual([0, 0])
})

/** Deviation by looking at very many places, each edge straight between its points. */
const bruteDeviation = (a: readonly [number, number][], b: readonly [number, number][]) => {
  const at = (line: readonly [number, number][], u: number): number => {
    const k = Math.max(
      1,
      line.findIndex(([place]) => place >= u),
    )
    const [[u0, v0], [u1, v1]] = [line[k - 1], line[k]] as [[number, number], [number, number]]
    return v0 + ((v1 - v0) * (u - u0)) / (u1 - u0)
  }
  const foremost = (line: readonly [number, number][]) => Math.min(...line.map(([, v]) => v))
  const [left, right] = [Math.max(a[0]?.[0] ?? 0, b[0]?.[0] ?? 0), Math.min(a.at(-1)?.[0] ?? 0, b.at(-1)?.[0] ?? 0)]
  let most = 0
  for (let k = 0; k <= 40_000; k++) {
    const u = left + ((right - left) * k) / 40_000
    const by = at(b, u) - foremost(b) - (at(a, u) - foremost(a))
    if (Math.abs(by) > Math.abs(most)) most = by
  }
  return most
}

const lineOf = (points: readonly [number, number][]) => ({
  uMm: points.map(([u]) => u),
  vMm: points.map(([, v]) => v),
  stride: 1,
})

test('the greatest deviation is that found by looking at 40,000 places, for unlike widths and points', () => {
  let seed = 7
  const random = (): number => {
    seed = (seed * 16_807) % 2_147_483_647
    return seed / 2_147_483_647
  }
  for (let trial = 0; trial < 12; trial++) {
    const edge = (widthMm: number, count: number): [number, number][] =>
      Array.from({ length: count }, (_, i) => [widthMm * (i / (count - 1) - 0.5), 0.5 * random()])
    const [a, b] = [edge(40 + 30 * random(), 21), edge(40 + 30 * random(), 13)]
    const found = deviationOf(lineOf(a), lineOf(b))
    // 0.5 mm over the nearest points, 2 mm apart: a 40,000th of 70 mm misses the peak by less than 0.001 mm.
    expect(Math.abs(found.byMm)).toBeCloseTo(Math.abs(bruteDeviation(a, b)), 3)
  }
})

test('a deviation says which lies further back and where, each edge counted from its own foremost point', () => {
  const flat = { uMm: [-20, 0, 20], vMm: [7, 7, 7], stride: 1 }
  const bent = { uMm: [-20, 0, 20], vMm: [1.1, 9, 1, 9, 1.3, 9], stride: 2 }
  const found = deviationOf(flat, bent)
  expect(found.byMm).toBeCloseTo(0.3, 12)
  expect([found.atUMm, found.behindMm]).toEqual([20, 0])
  const turned = deviationOf(bent, flat)
  expect(turned.byMm).toBeCloseTo(-0.3, 12)
  expect(turned.behindMm).toBeCloseTo(0.3, 12)
  expect(deviationOf(bent, bent)).toEqual({ byMm: 0, atUMm: 0, behindMm: 0 })
})

test('of two places as far apart the left one is told, whatever rounding says', () => {
  const flat = { uMm: [-20, 20], vMm: [0, 0], stride: 1 }
  const even = { uMm: [-20, 0, 20], vMm: [0.2, 0, 0.2 + 1e-15], stride: 1 }
  expect(deviationOf(flat, even).atUMm).toBe(-20)
})
