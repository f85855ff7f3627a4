import { expect, test, vi } from 'vitest'
import { bringBack, standingOf } from '../../renderer/worker/bringBack.ts'
import { createLiveGrind, type LiveGrind } from '../../renderer/worker/liveGrind.ts'
import type { FromWorker } from '../../renderer/worker/protocol.ts'
import type { SolverPort } from '../../renderer/worker/spawn.ts'
import { watch } from '../../renderer/worker/watch.ts'
import { bench, jobOf, STEPS } from './loopBench.ts'

/** A worker on a clock of its own; what it has said is handed over by `turn`. */
const workerOf = () => {
  const worker = bench()
  let told = 0
  const port: SolverPort = {
    onmessage: null,
    onerror: null,
    postMessage: (message) => worker.take(message as Parameters<typeof worker.take>[0]),
    terminate: () => undefined,
  }
  const turn = (): void => {
    for (let k = 0; k < 40; k++) {
      worker.runOut(200)
      for (; told < worker.posted.length; told++)
        port.onmessage?.({ data: structuredClone(worker.posted[told]) } as MessageEvent<FromWorker>)
    }
  }
  return { port, turn }
}

const begun = (): { live: LiveGrind; run: number; worker: ReturnType<typeof workerOf> } => {
  const worker = workerOf()
  const live = createLiveGrind(() => worker.port)
  const run = live.start(jobOf())
  worker.turn()
  return { live, run, worker }
}

const shown = ({ latest }: LiveGrind) => {
  const { run: _run, ...frame } = latest ?? { run: 0 }
  return frame
}

test('a fresh worker comes back to the moment where the lost one stood, to the last bit', () => {
  const lost = begun()
  lost.live.seek(3 * STEPS + 2)
  lost.worker.turn()
  lost.worker.port.onerror?.({} as ErrorEvent)
  expect(lost.live.problems).toMatchObject([{ code: 'solverLost' }])

  const fresh = begun()
  bringBack(fresh.live, fresh.run, standingOf(lost.live))
  fresh.worker.turn()
  expect(fresh.live.latest?.step).toBe(3 * STEPS + 2)
  expect(shown(fresh.live)).toEqual(shown(lost.live))
  expect(fresh.live.problems).toEqual([])
})

test('sweeps made by hand are made again', () => {
  const lost = begun()
  lost.live.seek(STEPS)
  lost.worker.turn()
  lost.live.press(0.8, 3)
  lost.worker.turn()
  lost.live.press(-0.4, 5)
  lost.worker.turn()
  expect(lost.live.handMade?.fromStep).toBe(STEPS)

  const fresh = begun()
  bringBack(fresh.live, fresh.run, standingOf(lost.live))
  fresh.worker.turn()
  expect(fresh.live.latest?.step).toBe(STEPS + 8)
  expect(shown(fresh.live)).toEqual(shown(lost.live))
  expect(fresh.live.handMade?.path).toEqual(lost.live.handMade?.path)
})

/** A worker that says only what it is told to, watched; `look` is one look of the watch. */
const watched = () => {
  const inner: SolverPort = { onmessage: null, onerror: null, postMessage: () => undefined, terminate: vi.fn() }
  const looks = new Set<() => void>()
  const port = watch(inner, (look) => {
    looks.add(look)
    return () => looks.delete(look)
  })
  const failed = vi.fn()
  port.onerror = failed
  const look = (times: number): void => {
    for (let k = 0; k < times; k++) for (const each of looks) each()
  }
  const say = (said: object): void => inner.onmessage?.({ data: said } as MessageEvent<FromWorker>)
  return { port, inner, failed, look, say }
}

/** More looks than any silence is borne for. */
const MANY = 20

test('a worker that owes a frame and falls silent counts as lost, once, and is put away', () => {
  const { port, inner, failed, look, say } = watched()
  port.postMessage({ type: 'play', sweepsPerSecond: 1 })
  look(5)
  say({ type: 'frame', frame: { playing: true } })
  look(5)
  expect(failed).not.toHaveBeenCalled()
  look(MANY)
  expect(failed).toHaveBeenCalledTimes(1)
  expect(inner.terminate).toHaveBeenCalledTimes(1)
})

test('a worker that owes nothing may be silent for ever', () => {
  const { port, failed, look, say } = watched()
  look(MANY)
  port.postMessage({ type: 'seek', step: 3 })
  say({ type: 'frame', frame: { playing: false } })
  look(MANY)
  port.postMessage({ type: 'start', run: 1, job: jobOf() })
  say({ type: 'trouble', run: 1, problems: [] })
  look(MANY)
  expect(failed).not.toHaveBeenCalled()
})
