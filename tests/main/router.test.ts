import { describe, expect, it } from 'vitest'
import { failed, ok, problem } from '../../geometry/result.ts'
import { calls } from '../../main/contract/calls.ts'
import { createRouter } from '../../main/router.ts'
import type { Services } from '../../main/services.ts'
import { codesOf } from './support.ts'

const routerWith = (services: Partial<Record<string, unknown>>, faults: unknown[] = [], whole = true) =>
  createRouter(services as unknown as Services, {
    onFault: (error) => faults.push(error),
    readsThrough: async () => whole,
  })

const ask = (router: ReturnType<typeof routerWith>, name: string, input: unknown) =>
  router.handle(name, input, 'c', () => undefined)

describe('the router', () => {
  it.each(['', 'tool', 'tool.drop', 'constructor', '__proto__', 'toString', 'tool.find '])(
    'refuses the name %j',
    async (name) => {
      const router = routerWith({ [name]: async () => ok('reached') })
      expect(codesOf(await ask(router, name, {}))).toEqual(['unknownCall'])
    },
  )

  it.each([
    ['no input', undefined, [problem('missing')]],
    ['a text', 'x', [problem('wrongType', '', { expected: 'object' })]],
    [
      'an unknown field',
      { search: '', more: 1, last: 2 },
      [problem('unknownField', 'more', { key: 'more' }), problem('unknownField', 'last', { key: 'last' })],
    ],
    ['a wrong type', { search: 3 }, [problem('wrongType', 'search', { expected: 'string' })]],
    ['too long a text', { search: 'x'.repeat(201) }, [problem('tooLong', 'search', { most: 200 })]],
  ])('refuses %s before any service is reached', async (_, input, problems) => {
    const router = routerWith({ 'tool.find': async () => ok([]) })
    expect(await ask(router, 'tool.find', input)).toEqual(failed(...problems))
  })

  it('fills in defaults before the service', async () => {
    const router = routerWith({ 'change.list': async (input: unknown) => failed(problem(JSON.stringify(input))) })
    expect(codesOf(await ask(router, 'change.list', {}))).toEqual(['{"most":20,"only":"all"}'])
  })

  it('lets nothing out that the contract does not name', async () => {
    const faults: unknown[] = []
    const services = { 'workshop.get': async () => ok({ rack: 'demo', tools: 1, secret: 2 }) }
    const asked = (whole: boolean) => ask(routerWith(services, faults, whole), 'workshop.get', {})
    // Where all data reads well, the program is at fault.
    expect(codesOf(await asked(true))).toEqual(['serviceFailed'])
    expect(codesOf(await asked(false))).toEqual(['dataUnreadable'])
    expect(faults).toHaveLength(2)
  })

  it('answers a problem when a service throws, and tells the log', async () => {
    const faults: unknown[] = []
    const broken = new Error('broken')
    const router = routerWith({ 'station.list': () => Promise.reject(broken) }, faults)
    expect(codesOf(await ask(router, 'station.list', {}))).toEqual(['serviceFailed'])
    expect(faults).toEqual([broken])
  })

  it('passes cancel on by the id of the call, to no other', async () => {
    const aborted: string[] = []
    const waiting = (_: unknown, { signal }: { signal: AbortSignal }) =>
      new Promise((resolve) => signal.addEventListener('abort', () => resolve(failed(problem('cancelled')))))
    const router = routerWith({ 'card.make': waiting })
    const id = { id: crypto.randomUUID() }
    const first = router.handle('card.make', id, 'one', () => undefined).then((r) => aborted.push(`one ${codesOf(r)}`))
    void router.handle('card.make', id, 'two', () => undefined).then(() => aborted.push('two'))
    router.cancel('none')
    router.cancel('one')
    await first
    expect(aborted).toEqual(['one cancelled'])
  })
})

describe('the contract', () => {
  it('names each call by a noun and a verb', () => {
    for (const name of Object.keys(calls)) expect(name).toMatch(/^[a-z][A-Za-z]+\.[a-z]+$/)
  })
})
