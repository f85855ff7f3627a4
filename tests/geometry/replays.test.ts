import { describe, expect, it } from 'vitest'
import { forget } from '../../geometry/clearance.ts'
import { advance, type GrindState, restore, snapshot, startGrind } from '../../geometry/grind.ts'
import type { Motion } from '../../geometry/motion.ts'
import { begin, type Changes, exampleJob, found } from './example.ts'

const grid = { across: 21, through: 5 }
const STEPS = 96

const cases: readonly (Changes & { readonly name: string })[] = [
  { name: 'steered', grid },
  {
    name: 'steered, three settings',
    grid,
    motion: {
      sweeps: 1,
      schedule: [
        { stopTurnsLeft: 1, stopTurnsRight: 0.5, fingerReachMm: 20, sweeps: 1 },
        { stopTurnsLeft: 0.3, stopTurnsRight: 0.3, fingerReachMm: 5, sweeps: 2 },
      ],
    },
  },
  { name: 'a wheel that wears', grid, station: { grindingRatio: 2 } },
  {
    name: 'a recorded path',
    grid,
    motion: { path: 'recorded', recordedPath: [0, 0.7, 1, 0.2, -0.9, -0.4], recordedSweeps: 3 },
  },
  { name: 'rocking', grid, fixture: { kind: 'rocking' }, motion: { rollLeftDeg: 1, rollRightDeg: 1 } },
  {
    name: 'rocking, every error of the set-up',
    grid,
    fixture: { kind: 'rocking', rollHeightMm: 6 },
    motion: { rollLeftDeg: 2, rollRightDeg: 3, fingerReachMm: 28 },
    errors: { barAskewDeg: 0.5, barRollDeg: 0.4, mountingAskewDeg: 1, pivotTiltDeg: 1, parasiticRollDeg: 0.3 },
  },
  { name: 'swing', grid, fixture: { kind: 'swing', swingRadiusMm: 120 }, motion: { yawLeftDeg: 1, yawRightDeg: 1 } },
]

/** Everything that is shown of a moment, numbers as they are. */
const momentOf = (state: GrindState) => ({
  ...snapshot(state),
  yawRad: state.yawRad,
  rollRad: state.rollRad,
  tiltRad: state.tiltRad,
  traverseMm: state.traverseMm,
})

const momentsFrom = (state: GrindState, motion: Motion): ReturnType<typeof momentOf>[] => {
  const moments: ReturnType<typeof momentOf>[] = []
  while (state.step < STEPS) {
    found(advance(state, motion, 1))
    moments.push(momentOf(state))
  }
  return moments
}

describe.each(cases)('$name', (changes) => {
  const job = exampleJob(changes)
  const { state, motion } = begin(job)
  const whole = momentsFrom(state, motion)

  it('gives the same bits again, and in one go', () => {
    const again = begin(job)
    expect(momentsFrom(again.state, again.motion)).toEqual(whole)
    const atOnce = begin(job)
    found(advance(atOnce.state, atOnce.motion, STEPS))
    expect(momentOf(atOnce.state)).toEqual(whole.at(-1))
  })

  it('gives the same bits when no column and no row is ever passed over', () => {
    const thorough = begin(job)
    for (const moment of whole) {
      forget(thorough.state.weighing.scales.clearance)
      found(advance(thorough.state, motion, 1))
      expect(momentOf(thorough.state)).toEqual(moment)
    }
  })

  it.each([1, 7, 24, 47, 48, 95])(
    'goes on from step %i to the same bits, on the same state and on a fresh one',
    (step) => {
      const going = begin(job)
      found(advance(going.state, motion, step))
      const kept = snapshot(going.state)
      found(advance(going.state, motion, 13))
      for (const later of [going.state, found(startGrind(job))]) {
        restore(later, kept)
        expect(momentOf(later)).toEqual(whole[step - 1])
        expect(momentsFrom(later, motion)).toEqual(whole.slice(step))
      }
    },
  )
})
