import { describe, expect, it } from 'vitest'
import { advance, type GrindState } from '../../geometry/grind.ts'
import { grindOutcome } from '../support/grindFault.ts'
import { begin, type Changes, exampleJob, found, ground } from './example.ts'

const grid = { across: 21, through: 5 }
const square = { fixture: { kind: 'square' as const } }
const wide = { wheelWidthMm: 80 }

const losses = ({ vMm, vStartMm }: GrindState): number[] => Array.from(vMm, (v, at) => v - (vStartMm[at] as number))

/** Rows through the thickness that have lost steel, edge first. */
const wornRows = (state: GrindState): number[] => {
  const worn = new Set<number>()
  for (const [at, loss] of losses(state).entries()) if (loss > 0) worn.add(at % state.throughCount)
  return [...worn].sort((a, b) => a - b)
}

const afterOneStep = (changes: Changes): GrindState => {
  const { state, motion } = begin(exampleJob({ ...changes, grid }))
  return found(advance(state, motion, 1))
}

describe('first touch', () => {
  it('a bevel steeper than aimed at touches with its heel', () => {
    expect(wornRows(afterOneStep({ ...square, station: wide, blade: { currentBevelDeg: 32 } }))).toEqual([4])
  })

  it('a bevel shallower than aimed at touches with its edge', () => {
    expect(wornRows(afterOneStep({ ...square, station: wide, blade: { currentBevelDeg: 20 } }))).toEqual([0])
  })

  it.each([
    ['hangs free of', 3],
    ['lies deep in', -3],
    ['lies very deep in', -9],
  ])('a blade that at first %s the wheel comes to bear its load', (_, edgeMm) => {
    const state = afterOneStep({ ...square, station: wide, blade: { startEdge: [edgeMm, edgeMm] } })
    expect(state.weighing.scales.sums.force).toBeCloseTo(20, 3)
    expect(Math.sign(state.weighing.pose.depthSlope)).toBe(Math.sign(edgeMm))
  })

  it('one proud node carries the load alone and gives all the steel', () => {
    const { state, motion } = begin(exampleJob({ ...square, grid, motion: { loadN: 1, bedStiffnessNPerMm3: 2000 } }))
    const proud = 10 * 5 + 2
    for (let at = 0; at < state.vMm.length; at++) if (at !== proud) state.vMm[at] = (state.vMm[at] as number) + 1
    state.vStartMm.set(state.vMm)
    state.weighing.scales.clearance.mostVMm += 1
    found(advance(state, motion, 1))
    const worn = losses(state)
    const patchMm2 = (57 / 20) * (3.2 / 4)
    expect(worn.filter((loss) => loss > 0)).toHaveLength(1)
    expect((worn[proud] as number) * patchMm2).toBeCloseTo(0.5 / 24, 12)
  })
})

describe('stops', () => {
  it('both bear in turn, and the blade leaves each again', () => {
    const { state, motion } = begin(exampleJob({ grid, motion: { stopTurnsLeft: 0.2, stopTurnsRight: 0.3 } }))
    const bearings: string[] = []
    for (let step = 0; step < 40 * 24; step++) {
      found(advance(state, motion, 1))
      const { turnSlope } = state.weighing.pose
      if (state.bearing === 'right') expect(turnSlope).toBe((0.3 * 0.8) / 75)
      if (state.bearing === 'left') expect(turnSlope).toBe((-0.2 * 0.8) / 75)
      if (bearings.at(-1) !== state.bearing) bearings.push(state.bearing)
    }
    expect(bearings.slice(-8).sort()).toEqual(['left', 'left', 'none', 'none', 'none', 'none', 'right', 'right'])
  })

  it('a stop at zero on one side bears there and lets the other side go', () => {
    const job = exampleJob({ grid, motion: { stopTurnsLeft: 0, stopTurnsRight: 2, sweeps: 60 } })
    const state = ground(job)
    const edge = (i: number) => state.vMm[i * 5] as number
    expect(edge(20) - edge(10)).toBeGreaterThan(0.1)
    expect(grindOutcome(job)).toMatchObject({ refusal: null, fault: null })
  })
})

describe('a narrow wheel', () => {
  const narrow = { wheelWidthMm: 15 }

  it('may run off a corner as long as it covers some of the iron', () => {
    const job = exampleJob({ grid, station: narrow, motion: { traverseMm: 30, sweeps: 6 } })
    expect(grindOutcome(job)).toEqual({ steps: 144, refusal: null, fault: null })
  })

  it('beside the iron it carries nothing: named, with the step, and the blade stays as it was', () => {
    const { state, motion } = begin(exampleJob({ grid, station: narrow, motion: { traverseMm: 45 } }))
    const before = state.vMm.slice()
    let step = 0
    for (; step < 48; step++) {
      before.set(state.vMm)
      const result = advance(state, motion, 1)
      if (result.ok) continue
      expect(result.problems).toEqual([{ code: 'noBalance', path: 'motion', params: { step } }])
      break
    }
    expect(step).toBeLessThan(12)
    expect(state.vMm).toEqual(before)
    expect(state.step).toBe(step)
  })
})

it('freehand, a load pressed beyond the corner tips the blade: named', () => {
  const { state, motion } = begin(exampleJob({ grid, fixture: { kind: 'freehand' }, motion: { fingerReachMm: 33 } }))
  const result = advance(state, motion, 48)
  expect(result.ok ? [] : result.problems.map(({ code }) => code)).toEqual(['noBalance'])
})

describe.each([1, 20, 100])('a load of %i N', (loadN) => {
  it.each([0.2, 2, 20, 200, 2000])('balances at every step on a bed of %f N/mm^3', (bedStiffnessNPerMm3) => {
    for (const kind of ['steered', 'rocking', 'square', 'swing'] as const) {
      const job = exampleJob({
        grid,
        fixture: { kind, swingRadiusMm: 130 },
        motion: {
          loadN,
          bedStiffnessNPerMm3,
          sweeps: 2,
          rollLeftDeg: 0.5,
          rollRightDeg: 1,
          yawLeftDeg: 1,
          yawRightDeg: 1,
        },
      })
      expect(grindOutcome(job)).toEqual({ steps: 48, refusal: null, fault: null })
    }
  })
})
