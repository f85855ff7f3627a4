import { describe, expect, it } from 'vitest'
import { lifeLeft } from '../../geometry/lifeLeft.ts'

describe('what is left of an iron', () => {
  it('is its length over what a grind takes, with the doubt worked out by hand', () => {
    // Doubt: sqrt(0.075^2 + 0.15^2 / 200 + 0.025^2) = 0.0798; 200 / 1.1596 = 172.5, 200 / 0.8404 = 238.0; in two figures.
    expect(lifeLeft(20, [0.1, 0.1, 0.1, 0.1], 'bench')).toEqual({ grinds: 200, from: 170, to: 240, perGrindMm: 0.1 })
  })

  it('takes a wide spread where too few grinds were noted to show their own', () => {
    // Doubt: sqrt(0.2887^2 + 0.0354^2 + 0.025^2) = 0.2919; 200 / 1.5838 = 126.3, 200 / 0.4162 = 480.5; in two figures.
    expect(lifeLeft(20, [0.1, 0.1, 0.1], 'bench')).toMatchObject({ from: 120, to: 490 })
  })

  it('goes by the middle value, so that a nick ground out once does not shorten it', () => {
    expect(lifeLeft(20, [0.1, 0.1, 1.5, 0.1, 0.1], 'bench')?.grinds).toBe(200)
  })

  it('is the less sure the fewer and the more unlike the grinds were, and by the model least', () => {
    const width = (taken: readonly number[], by: 'bench' | 'model' = 'bench') => {
      const life = lifeLeft(20, taken, by)
      return life ? life.to - life.from : Number.NaN
    }
    const alike = Array.from({ length: 9 }, () => 0.1)
    const unlike = [0.02, 0.05, 0.06, 0.1, 0.1, 0.1, 0.14, 0.16, 0.2]
    expect(width(alike)).toBeLessThan(width(alike.slice(0, 4)))
    expect(width(alike.slice(0, 4))).toBeLessThan(width(alike.slice(0, 3)))
    expect(width(alike.slice(0, 3))).toBeLessThan(width(alike.slice(0, 1)))
    expect(width(alike)).toBeLessThan(width(unlike))
    expect(width(alike.slice(0, 1))).toBeLessThan(width(alike.slice(0, 1), 'model'))
  })

  it('never promises more than three times what the figures say, nor less than nothing', () => {
    expect(lifeLeft(10, [0.1], 'model')).toMatchObject({ grinds: 100, to: 300 })
    expect(lifeLeft(0.05, [0.1], 'bench')).toMatchObject({ grinds: 0, from: 0, to: 1 })
    expect(lifeLeft(-2, [0.1], 'bench')).toMatchObject({ grinds: 0, from: 0 })
  })

  it('is not told where no grind was noted, or none took anything', () => {
    expect(lifeLeft(20, [], 'bench')).toBeNull()
    expect(lifeLeft(20, [0, 0, 0.1], 'bench')).toBeNull()
  })
})
