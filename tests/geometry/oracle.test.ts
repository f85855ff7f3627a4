import { describe, expect, it } from 'vitest'
import { advance } from '../../geometry/grind.ts'
import { grindOracle, startOracle } from '../support/oracle.ts'
import { begin, type Changes, exampleJob, found } from './example.ts'

/**
 * The engine leaves a balance once force and moment are met to 1e-5 of the load, so a step's steel may be misplaced by a few
 * times 1e-5 of itself. These grinds go 0.02 to 0.1 mm deep: at worst 1e-6 mm if every step erred the same way.
 * Seen: 1e-8 to 1e-7 mm.
 */
const APART_MM = 1e-6

/** Deep enough that a wrong term anywhere shows far above the tolerance. */
const LEAST_DEEP_MM = 0.01

const grid = { across: 15, through: 4 }
const motion = { stepsPerSweep: 8, sweeps: 2 }

const cases: readonly (Changes & { readonly name: string })[] = [
  { name: 'steered', motion },
  {
    name: 'steered, unequal stops, left first, pivot off bar and centre line',
    motion: { ...motion, stopTurnsLeft: 0.5, startSide: 'left' },
    fixture: { pivotOffsetMm: 4, pivotSetbackMm: 12 },
  },
  { name: 'steered, stops that bear', motion: { ...motion, stopTurnsLeft: 0.1, stopTurnsRight: 0.05 } },
  { name: 'steered, wheel narrower than the iron', motion, station: { wheelWidthMm: 20 } },
  { name: 'steered, stiff bed', motion: { ...motion, bedStiffnessNPerMm3: 400, loadN: 40 } },
  {
    name: 'rocking, axis above the back',
    motion: { ...motion, rollLeftDeg: 1, rollRightDeg: 0.5 },
    fixture: { kind: 'rocking', rollHeightMm: 6 },
  },
  {
    name: 'rocking, axis below the back and off the centre line',
    motion: { ...motion, rollLeftDeg: 0.5, rollRightDeg: 0.5 },
    fixture: { kind: 'rocking', rollHeightMm: -4, pivotOffsetMm: 3 },
  },
  { name: 'square', motion, fixture: { kind: 'square' } },
]

describe('a slow, plain oracle, written from the formulas alone', () => {
  it.each(cases)('$name: every node within a nanometre', (changes) => {
    const job = exampleJob({ ...changes, grid })
    const steps = motion.sweeps * motion.stepsPerSweep
    const oracle = startOracle(job)
    grindOracle(job, oracle, steps)
    const begun = begin(job)
    const state = found(advance(begun.state, begun.motion, steps))
    let apartMm = 0
    let deepMm = 0
    for (let at = 0; at < state.vMm.length; at++) {
      const v = oracle.v[Math.floor(at / grid.through)]?.[at % grid.through] as number
      apartMm = Math.max(apartMm, Math.abs(v - (state.vMm[at] as number)))
      deepMm = Math.max(deepMm, v - (state.vStartMm[at] as number))
    }
    expect(deepMm).toBeGreaterThan(LEAST_DEEP_MM)
    expect(apartMm).toBeLessThan(APART_MM)
  })
})
