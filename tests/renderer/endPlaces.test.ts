import { expect, test } from 'vitest'
import { endPlaces } from '../../renderer/grind/endPlaces.ts'

const HEIGHT = 228

test('the names at the ends never lie on one another, on the figure below one, or on the scale above', () => {
  for (let now = 0; now <= 260; now += 3) {
    for (let wanted = 10; wanted <= 205; wanted += 3) {
      const { nowYPx, wantedYPx } = endPlaces(now, wanted, HEIGHT)
      const apart = nowYPx - wantedYPx
      expect(apart <= -20 || apart >= 40, `now ${now}, wanted ${wanted}`).toBe(true)
      expect(Math.min(nowYPx, wantedYPx)).toBeGreaterThanOrEqual(84)
      expect(nowYPx).toBeLessThanOrEqual(HEIGHT - 4)
    }
  }
})

test('with room round it a name stands at its curve', () => {
  expect(endPlaces(120, 180, HEIGHT)).toEqual({ nowYPx: 120, wantedYPx: 180 })
  expect(endPlaces(150, null, HEIGHT).nowYPx).toBe(150)
})

test('where the scale pushes both down, the one that lies less deep still stands above', () => {
  const { nowYPx, wantedYPx } = endPlaces(30, 61, HEIGHT)
  expect(nowYPx).toBeLessThan(wantedYPx)
})
