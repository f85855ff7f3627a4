import { afterEach, expect, it, vi } from 'vitest'
import { nouns } from '../../main/contract/entities.ts'
import type { HostEvent } from '../../main/contract/events.ts'

/** A browser's connection for events, in the test's hand. */
class PretendedSource {
  static readonly open: PretendedSource[] = []
  onopen: () => void = () => undefined
  onerror: () => void = () => undefined
  onmessage: (message: { readonly data: string }) => void = () => undefined
  isClosed = false
  constructor() {
    PretendedSource.open.push(this)
  }
  close(): void {
    this.isClosed = true
  }
}

afterEach(() => {
  vi.unstubAllGlobals()
  PretendedSource.open.length = 0
})

it('after a machine has slept and the connection was dropped, everything counts as changed, once', async () => {
  vi.stubGlobal('window', {})
  vi.stubGlobal('EventSource', PretendedSource)
  const { transport } = await import('../../renderer/app/transport.ts')
  const told: HostEvent[] = []
  const stop = transport.onEvent((event) => void told.push(event))
  const stopOther = transport.onEvent(() => undefined)
  const [source] = PretendedSource.open as [PretendedSource]
  source.onopen()
  expect(told).toEqual([])
  source.onmessage({ data: JSON.stringify({ type: 'changed', noun: 'tool', ids: [] }) })
  expect(told).toEqual([{ type: 'changed', noun: 'tool', ids: [] }])
  told.length = 0
  // The engine tries again by itself, each time in vain until the machine is awake.
  for (let i = 0; i < 3; i++) source.onerror()
  source.onopen()
  expect(told).toEqual(nouns.map((noun) => ({ type: 'changed', noun, ids: [] })))
  told.length = 0
  source.onopen()
  expect(told).toEqual([])
  stop()
  expect(source.isClosed).toBe(false)
  stopOther()
  expect(source.isClosed).toBe(true)
  expect(PretendedSource.open).toHaveLength(1)
})
