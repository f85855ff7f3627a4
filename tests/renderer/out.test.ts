import { describe, expect, it } from 'vitest'
import type { Job } from '../../geometry/job.ts'
import { problem } from '../../geometry/result.ts'
import { frameCount, planClip } from '../../renderer/grind/save/clipPlan.ts'
import { goTo } from '../../renderer/grind/save/moments.ts'
import { fileName } from '../../renderer/grind/save/pictured.ts'
import { createGrindLoop } from '../../renderer/worker/grindLoop.ts'
import { createLiveGrind, type LiveGrind } from '../../renderer/worker/liveGrind.ts'
import type { FromWorker, ToWorker } from '../../renderer/worker/protocol.ts'
import { exampleJob, found } from '../geometry/example.ts'

const run = { sweeps: 8, stepsPerSweep: 24 }
const choice = { fromSweep: 2, toSweep: 3, framesPerSecond: 12, slower: 1 }
const codeOf = (result: ReturnType<typeof planClip>) => (result.ok ? null : result.problems[0]?.code)

describe('the pictures of a clip', () => {
  it('stand evenly in its time, each at its moment, a sweep a second', () => {
    const frames = found(planClip(choice, run))
    expect(frames).toHaveLength(12)
    expect(frames[0]).toEqual({ atSeconds: 0, sweep: 2, step: 48 })
    expect(frames[3]).toEqual({ atSeconds: 0.25, sweep: 2.25, step: 54 })
    // The end itself would begin a thirteenth.
    expect(frames.at(-1)?.sweep).toBeCloseTo(2 + 11 / 12, 12)
  })

  it('are four times as many at a quarter of the speed, and closer together', () => {
    const frames = found(planClip({ ...choice, slower: 4 }, run))
    expect(frames).toHaveLength(48)
    expect(frames[12]).toEqual({ atSeconds: 1, sweep: 2.25, step: 54 })
    expect(frameCount({ ...choice, slower: 4 })).toBe(48)
  })

  it('are refused where the clip ends first, the run ends first, or there are too many', () => {
    expect(codeOf(planClip({ ...choice, toSweep: 2 }, run))).toBe('clipBackwards')
    expect(codeOf(planClip({ ...choice, toSweep: 9 }, run))).toBe('clipBeyond')
    expect(
      codeOf(
        planClip({ ...choice, slower: 8, framesPerSecond: 60, fromSweep: 0, toSweep: 100 }, { ...run, sweeps: 120 }),
      ),
    ).toBe('clipTooLong')
  })
})

describe('a file’s name', () => {
  it('is made of what it holds, in letters that every system takes', () => {
    expect(fileName(['T/14 É', 'Glass', 'sweep', '12.50'], 'png')).toBe('t-14-e-glass-sweep-12-50.png')
    expect(fileName(['刨', ''], 'stl')).toBe('blade.stl')
  })
})

/** A live grind with the worker's own loop beside it in one thread. */
const liveHere = (): LiveGrind =>
  createLiveGrind(() => {
    const port = {
      onmessage: null as ((event: MessageEvent<FromWorker>) => void) | null,
      onerror: null,
      terminate: () => undefined,
      postMessage: (message: ToWorker) => loop.take(structuredClone(message) as Parameters<typeof loop.take>[0]),
    }
    const loop = createGrindLoop({
      post: (data) => void port.onmessage?.({ data } as MessageEvent<FromWorker>),
      nowMs: () => performance.now(),
      after: (ms, work) => void setTimeout(work, ms),
    })
    return port
  })

const started = async (job: Job): Promise<{ live: LiveGrind; run: number }> => {
  const live = liveHere()
  const number = live.start(job)
  await new Promise<void>((done) => {
    const end = live.subscribe('frame', () => {
      end()
      done()
    })
  })
  return { live, run: number }
}

describe('going to a moment', () => {
  // The wait for the window's pictures is the window's; here there is none.
  globalThis.requestAnimationFrame ??= (draw) => setTimeout(() => draw(0), 0) as unknown as number
  const job = exampleJob({ motion: { sweeps: 3 }, grid: { across: 15, through: 5 } })
  const never = new AbortController().signal

  it('stands exactly there, between two steps too, forwards and back', async () => {
    const { live, run: number } = await started(job)
    const at = async (step: number) => {
      expect(await goTo(live, number, step, never)).toEqual({ ok: true, value: null })
      return { sweep: live.latest?.sweep ?? -1, yawRad: live.latest?.yawRad ?? 9 }
    }
    const [one, half, two] = [await at(30), await at(30.5), await at(31)]
    expect([one, half, two].map(({ sweep }) => sweep * 24)).toEqual(
      [30, 30.5, 31].map((step) => expect.closeTo(step, 9)),
    )
    expect(half.yawRad).toBeCloseTo((one.yawRad + two.yawRad) / 2, 12)
    expect(one.yawRad).not.toBe(two.yawRad)
    expect(await at(30)).toEqual(one)
  })

  it('finds its moment again where somebody moved the grind meanwhile', async () => {
    const { live, run: number } = await started(job)
    const going = goTo(live, number, 40, never)
    live.seek(10)
    expect((await going).ok).toBe(true)
    expect((live.latest?.sweep ?? 0) * 24).toBeCloseTo(40, 9)
  })

  it('tells why where the run ends before, and not where it ends later', async () => {
    const { live, run: number } = await started(job)
    expect((await goTo(live, number, 10, never)).ok).toBe(true)
    const ended = (lastStep: number) =>
      Object.create(live, {
        latest: { value: { ...live.latest, lastStep } },
        problems: { value: [problem('noBalance')] },
        seek: { value: () => live.seek(10) },
      })
    expect(await goTo(ended(9), number, 10, never)).toMatchObject({ ok: false, problems: [{ code: 'noBalance' }] })
    expect((await goTo(ended(11), number, 10, never)).ok).toBe(true)
  })

  it('is broken off by its signal, and by a run that ends for another', async () => {
    const { live, run: number } = await started(job)
    const stop = new AbortController()
    const going = goTo(live, number, 60, stop.signal)
    stop.abort()
    expect(await going).toMatchObject({ ok: false, problems: [{ code: 'cancelled' }] })
    const other = goTo(live, number, 60, never)
    live.start(exampleJob({ motion: { sweeps: 4 }, grid: { across: 15, through: 5 } }))
    expect(await other).toMatchObject({ ok: false, problems: [{ code: 'clipRunChanged' }] })
  })
})
