import { expect, it } from 'vitest'
import type { Findings } from '../../geometry/lesson/findings.ts'
import { ok } from '../../geometry/result.ts'
import { createLessonEngine, type Looked } from '../../renderer/teach/engine.ts'
import type { ToWorker } from '../../renderer/worker/protocol.ts'
import type { SolverPort } from '../../renderer/worker/spawn.ts'
import { lessons } from '../lessons/support.ts'

const looked = (step: number): Looked => ({ lesson: lessons[0] as Looked['lesson'], step, moved: {}, seed: 0 })
const nothing: Findings = { values: {}, edgeMm: null, groundMm: null }

/** Workers that answer when they are told to. */
const bench = () => {
  const ports: (SolverPort & { readonly asked: ToWorker[] })[] = []
  const engine = createLessonEngine(() => {
    const port: (typeof ports)[number] = {
      asked: [],
      postMessage: (message) => port.asked.push(message),
      onmessage: null,
      onerror: null,
      terminate: () => undefined,
    }
    ports.push(port)
    return port
  })
  const reply = () => ports.at(-1)?.onmessage?.({ data: { type: 'taught', result: ok(nothing) } } as MessageEvent)
  return { engine, ports, reply }
}

it('works at one question, and of those that came meanwhile at the newest alone', async () => {
  const { engine, ports, reply } = bench()
  const [first, second, third] = [0, 1, 2].map((step) => engine.ask(looked(step)))
  expect(await second).toBeNull()
  reply()
  expect(await first).toEqual(ok(nothing))
  reply()
  expect(await third).toEqual(ok(nothing))
  expect(ports[0]?.asked.map((message) => 'step' in message && message.step)).toEqual([0, 2])
})

it('tells of a worker that was lost, and asks a new one next', async () => {
  const { engine, ports, reply } = bench()
  const first = engine.ask(looked(0))
  ports[0]?.onerror?.({} as ErrorEvent)
  expect(await first).toMatchObject({ ok: false, problems: [{ code: 'solverLost' }] })
  const second = engine.ask(looked(1))
  reply()
  expect(await second).toEqual(ok(nothing))
  expect(ports).toHaveLength(2)
})
