import { expect, it } from 'vitest'
import type { Dressing } from '../../main/contract/work.ts'
import { wearLine } from '../../renderer/rack/dressing/wearLine.ts'

const line = (id: string, day: number, diameterMm: number) =>
  ({ id, kind: 'dressed', at: `2020-03-0${day}T08:00:00.000Z`, diameterMm }) as Dressing
const room = { width: 120, height: 60, edge: 10 }

it('time runs to the right, a larger wheel lies higher, the least wheel at the foot', () => {
  const { points, leastY } = wearLine([line('c', 5, 225), line('b', 2, 250), line('a', 1, 250)], 200, room)
  expect(points).toEqual([
    { id: 'a', kind: 'dressed', x: 10, y: 10 },
    { id: 'b', kind: 'dressed', x: 35, y: 10 },
    { id: 'c', kind: 'dressed', x: 110, y: 30 },
  ])
  expect(leastY).toBe(50)
})

it('wheels that never changed lie in the middle, at one moment as at many', () => {
  const { points, leastY } = wearLine([line('a', 1, 250), line('b', 1, 250)], null, room)
  expect(points.map(({ x, y }) => [x, y])).toEqual([
    [60, 30],
    [60, 30],
  ])
  expect(leastY).toBeNull()
})
