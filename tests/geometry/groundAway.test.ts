import { expect, test } from 'vitest'
import { advance } from '../../geometry/grind.ts'
import { isGroundAway } from '../../geometry/groundAway.ts'
import { begin, exampleJob } from './example.ts'

test.each([
  [10, 2],
  [6, 1],
  [6, 3],
])(
  'a blade of %i x %i that is ground until none of it reaches the wheel says so, and keeps its last moment',
  (widthMm, thicknessMm) => {
    const { state, motion } = begin(
      exampleJob({
        blade: { widthMm, thicknessMm },
        motion: { removalPerSweepMm3: 20, sweeps: 600, stepsPerSweep: 8, fingerReachMm: widthMm / 2 - 1 },
        grid: { across: 21, through: 9 },
      }),
    )
    const ended = advance(state, motion, 600 * 8)
    expect(ended).toMatchObject({ ok: false, problems: [{ code: 'groundAway', params: { step: state.step } }] })
    // 130 to the edge at first; the wheel's surface begins 83.3 from the bar at a height of about 15: 130 - 82 = 48 can go.
    expect(Math.min(...state.vMm)).toBeGreaterThan(46)
    expect(Math.max(...state.vMm)).toBeLessThan(50)
  },
)

test('a blade that still reaches the wheel is not ground away, however far it is ground', () => {
  const { state, motion } = begin(exampleJob({ motion: { removalPerSweepMm3: 20, sweeps: 100, stepsPerSweep: 8 } }))
  expect(isGroundAway(state)).toBe(false)
  expect(advance(state, motion, 800).ok).toBe(true)
  expect(Math.min(...state.vMm)).toBeGreaterThan(8)
  expect(isGroundAway(state)).toBe(false)
})
