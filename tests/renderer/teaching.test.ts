import { afterEach, describe, expect, it } from 'vitest'
import type { Lesson } from '../../geometry/lesson/lesson.ts'
import { CLASS_WINDOW, type ShownModel } from '../../renderer/teach/class/channel.ts'
import { followMachine, useShowing } from '../../renderer/teach/class/showing.ts'
import { seedAgain } from '../../renderer/teach/otherFigures.ts'
import { lessons } from '../lessons/support.ts'

const lessonOf = (id: string): Lesson => lessons.find((lesson) => lesson.id === id) as Lesson

describe('a question asked again', () => {
  it('has other figures after each guess, since what was told would answer it', () => {
    expect(seedAgain(lessonOf('the-seat'), { kind: 'predict', value: 1 }, 0)).toBe(1)
    expect(seedAgain(lessonOf('the-seat'), { kind: 'predict', value: 1 }, 1)).toBe(2)
  })

  it('has its own where the lesson has no others, and where nothing was guessed', () => {
    expect(seedAgain(lessonOf('fingers'), { kind: 'predict', value: 1 }, 0)).toBe(0)
    expect(seedAgain(lessonOf('the-seat'), { kind: 'choose', choice: 0 }, 0)).toBe(0)
  })
})

describe('the class view', () => {
  afterEach(() => useShowing.setState({ here: false }))

  it('costs nothing until a class looks on, then is told how the machine stands', async () => {
    let asked = 0
    const frames: (() => void)[] = []
    const live = { latest: { playing: true }, subscribe: (_: string, tell: () => void) => [frames.push(tell)].length }
    const stands = (): ShownModel => {
      asked++
      return { step: asked } as ShownModel
    }
    followMachine(live as unknown as Parameters<typeof followMachine>[0], stands)
    for (let k = 0; k < 100; k++) frames[0]?.()
    expect(asked).toBe(0)
    const wall = new BroadcastChannel(CLASS_WINDOW)
    const shown = new Promise((done) => {
      wall.onmessage = ({ data }) => done(data)
    })
    wall.postMessage({ here: true, seen: true })
    expect(await shown).toMatchObject({ shows: { model: { step: 1 } } })
    wall.close()
  })
})
