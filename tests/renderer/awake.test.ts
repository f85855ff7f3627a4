import { expect, test } from 'vitest'
import { type AwakeLock, type AwakeState, type AwakeWindow, createAwake } from '../../renderer/app/awake.ts'

/** A window whose locks can be counted, taken back by the system, and refused. */
const playedWindow = () => {
  const states: AwakeState[] = []
  const held = new Set<AwakeLock>()
  const played: { isVisible: boolean; refuses: boolean; asked: number; changed(): void } = {
    isVisible: true,
    refuses: false,
    asked: 0,
    changed: () => undefined,
  }
  const makeLock = (): AwakeLock => {
    let gone: () => void = () => undefined
    const lock: AwakeLock = {
      release: async () => {
        held.delete(lock)
        gone()
      },
      addEventListener: (_, listener) => {
        gone = listener
      },
    }
    held.add(lock)
    return lock
  }
  const window: AwakeWindow = {
    request: async () => {
      played.asked++
      if (played.refuses) throw new DOMException('no', 'NotAllowedError')
      return makeLock()
    },
    isVisible: () => played.isVisible,
    onVisibility: (changed) => {
      played.changed = changed
    },
  }
  /** As a system does: it takes every lock back from a hidden window, then tells it. */
  const show = (isVisible: boolean): void => {
    played.isVisible = isVisible
    if (!isVisible) for (const lock of held) void lock.release()
    played.changed()
  }
  return { window, played, held, states, show, told: (state: AwakeState) => void states.push(state) }
}

const settled = (): Promise<void> => new Promise((done) => setTimeout(done, 0))

test('kept while wanted, let go when not', async () => {
  const { window, held, states, told } = playedWindow()
  const awake = createAwake(window, told)
  awake.want(true)
  await settled()
  expect([held.size, states.at(-1)]).toEqual([1, 'kept'])
  awake.want(false)
  await settled()
  expect([held.size, states.at(-1)]).toEqual([0, 'off'])
})

test('given back when the window is hidden, and taken again on return', async () => {
  const { window, held, states, show, told } = playedWindow()
  const awake = createAwake(window, told)
  awake.want(true)
  await settled()
  show(false)
  await settled()
  expect([held.size, states.at(-1)]).toEqual([0, 'off'])
  show(true)
  await settled()
  expect([held.size, states.at(-1)]).toEqual([1, 'kept'])
})

test('nothing is asked for while the window is hidden, nor twice', async () => {
  const { window, played, show, told } = playedWindow()
  const awake = createAwake(window, told)
  show(false)
  awake.want(true)
  await settled()
  expect(played.asked).toBe(0)
  show(true)
  show(true)
  await settled()
  expect(played.asked).toBe(1)
})

test('what is no longer wanted when it comes is let go at once', async () => {
  const { window, held, states, told } = playedWindow()
  const awake = createAwake(window, told)
  awake.want(true)
  awake.want(false)
  await settled()
  expect([held.size, states.at(-1)]).toEqual([0, 'off'])
})

test('a refusal is told, and asked again when the window comes back', async () => {
  const { window, played, held, states, show, told } = playedWindow()
  played.refuses = true
  const awake = createAwake(window, told)
  awake.want(true)
  await settled()
  expect(states.at(-1)).toBe('refused')
  played.refuses = false
  show(false)
  show(true)
  await settled()
  expect([held.size, states.at(-1)]).toEqual([1, 'kept'])
})

test('a window without the means says so', async () => {
  const { window, states, told } = playedWindow()
  createAwake({ ...window, request: null }, told).want(true)
  expect(states).toEqual(['impossible'])
})
