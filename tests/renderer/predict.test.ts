import { afterEach, expect, test } from 'vitest'
import { putAway, runGuess, usePredicting } from '../../renderer/grind/predict/predicting.ts'
import { sidesMistaken, verdictOf } from '../../renderer/grind/predict/verdict.ts'
import { createLiveGrind } from '../../renderer/worker/liveGrind.ts'
import type { FromWorker, ToWorker } from '../../renderer/worker/protocol.ts'
import type { SolverPort } from '../../renderer/worker/spawn.ts'
import { bench, jobOf, STEPS } from './loopBench.ts'

afterEach(putAway)

test.each([
  [0.3, 0.31, 'right'],
  [0.3, 0.28, 'right'],
  [0.25, 0.32, 'near'],
  [0.1, 0.32, 'more'],
  [0.5, 0.32, 'less'],
  [0.05, 0, 'less'],
] as const)('said %d and came %d is %s', (said, came, verdict) => expect(verdictOf(said, came)).toBe(verdict))

test('corners are mistaken only where both were plainly told apart, the wrong way round', () => {
  const said = { sweep: 5, leftMm: 0.3, rightMm: 0.1 }
  expect(sidesMistaken(said, { leftMm: 0.1, rightMm: 0.3 })).toBe(true)
  expect(sidesMistaken(said, { leftMm: 0.3, rightMm: 0.1 })).toBe(false)
  expect(sidesMistaken(said, { leftMm: 0.2, rightMm: 0.21 })).toBe(false)
})

/** A live grind whose worker is a loop in this thread. */
const liveOnBench = () => {
  const b = bench()
  const port: SolverPort = {
    postMessage: (message: ToWorker) => b.take(message as Parameters<typeof b.take>[0]),
    terminate: () => undefined,
    onmessage: null,
    onerror: null,
  }
  const live = createLiveGrind(() => port)
  let heard = 0
  const hear = () => {
    while (heard < b.posted.length) port.onmessage?.({ data: b.posted[heard++] } as MessageEvent<FromWorker>)
  }
  return { b, live, hear }
}

test.each([true, false])('the answer stands at the very sweep that was guessed (at once: %s)', (atOnce) => {
  const { b, live, hear } = liveOnBench()
  live.start(jobOf())
  b.runOut()
  hear()
  runGuess(live, { sweep: 3, leftMm: 0.1, rightMm: 0.1 }, STEPS, atOnce)
  expect(usePredicting.getState().stage).toBe('running')
  for (let k = 0; k < 200 && usePredicting.getState().stage === 'running'; k++) {
    b.pass(10, 10, false)
    hear()
  }
  expect(usePredicting.getState()).toMatchObject({ stage: 'told', run: 1 })
  expect(live.latest).toMatchObject({ step: 3 * STEPS, playing: false })
})
