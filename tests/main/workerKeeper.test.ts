import { describe, expect, it } from 'vitest'
import { ok, problem } from '../../geometry/result.ts'
import type { FromWorker, ToWorker } from '../../main/serviceMessages.ts'
import { createWorkerKeeper } from '../../main/workerKeeper.ts'

/** Workers that do only what a test tells them. */
const puppets = () => {
  const all: { posted: ToWorker[]; say(message: FromWorker): void; die(): void }[] = []
  const start = (say: (message: FromWorker) => void) => {
    const posted: ToWorker[] = []
    const { promise: ended, resolve: die } = Promise.withResolvers<void>()
    all.push({ posted, say, die })
    return { post: (message: ToWorker) => void posted.push(message), ended }
  }
  const at = (index: number) => all[index] ?? expect.fail(`no worker ${index}`)
  return { start, at, count: () => all.length }
}

const call =
  (name: string) =>
  (ticket: number): ToWorker => ({ type: 'call', ticket, callId: 'c', name, input: {} })
const settled = () => new Promise((resolve) => setImmediate(resolve))

const begun = async () => {
  const workers = puppets()
  const keeper = createWorkerKeeper(workers.start, () => undefined)
  const beginning = keeper.begin()
  workers.at(0).say({ type: 'ready' })
  await beginning
  return { workers, keeper }
}

describe('the keeper of the worker', () => {
  it('pairs answers with calls, in whatever order they come', async () => {
    const { workers, keeper } = await begun()
    const first = keeper.ask(call('one'))
    const second = keeper.ask(call('two'))
    const tickets = workers.at(0).posted.map((message) => ('ticket' in message ? message.ticket : 0))
    workers.at(0).say({ type: 'answer', ticket: tickets[1] ?? 0, result: ok('of two') })
    workers.at(0).say({ type: 'answer', ticket: tickets[0] ?? 0, result: ok('of one') })
    expect([await first, await second]).toMatchObject([{ result: ok('of one') }, { result: ok('of two') }])
  })

  it('answers what waited when the worker dies, and replaces it once', async () => {
    const { workers, keeper } = await begun()
    const waiting = keeper.ask(call('one'))
    workers.at(0).die()
    expect(await waiting).toBeNull()
    await settled()
    expect([workers.count(), keeper.problems()]).toEqual([2, []])
    workers.at(1).say({ type: 'ready' })
    void keeper.ask(call('two'))
    expect(workers.at(1).posted).toMatchObject([{ name: 'two' }])
    workers.at(1).die()
    await settled()
    expect(workers.count()).toBe(2)
    expect(keeper.problems()).toEqual([problem('serviceLost')])
  })

  it('makes one anew where all were lost, once something is asked, and says so where that one is lost too', async () => {
    const { workers, keeper } = await begun()
    workers.at(0).die()
    await settled()
    workers.at(1).die()
    await settled()
    expect(keeper.problems()).toEqual([problem('serviceLost')])
    // The first makes it, the second waits in its line.
    const asked = [keeper.ask(call('three')), keeper.ask(call('four'))]
    expect(workers.count()).toBe(3)
    workers.at(2).say({ type: 'ready' })
    await settled()
    expect(workers.at(2).posted).toMatchObject([{ name: 'three' }, { name: 'four' }])
    expect(keeper.problems()).toEqual([])
    workers.at(2).die()
    expect(await Promise.all(asked)).toEqual([null, null])
    await settled()
    const last = keeper.ask(call('five'))
    workers.at(3).die()
    expect(await last).toBeNull()
    expect([workers.count(), keeper.problems()]).toEqual([4, [problem('serviceLost')]])
  })

  it('does not replace one that refused, nor one that was told to close', async () => {
    const workers = puppets()
    const keeper = createWorkerKeeper(workers.start, () => undefined)
    const beginning = keeper.begin()
    workers.at(0).say({ type: 'refused', problems: [problem('rackTooNew')] })
    workers.at(0).die()
    await beginning
    await settled()
    expect([workers.count(), keeper.problems()]).toEqual([1, [problem('rackTooNew')]])

    const closing = await begun()
    const closed = closing.keeper.close()
    closing.workers.at(0).die()
    await closed
    await settled()
    expect(closing.workers.count()).toBe(1)
  })

  it('comes back from a beginning in which every worker dies', async () => {
    const workers = puppets()
    const keeper = createWorkerKeeper(workers.start, () => undefined)
    const beginning = keeper.begin()
    workers.at(0).die()
    await settled()
    workers.at(1).die()
    await beginning
    expect(keeper.problems()).toEqual([problem('serviceLost')])
  })
})
