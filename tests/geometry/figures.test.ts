import { describe, expect, it } from 'vitest'
import { edgeOfState, exampleJob, ground, reliefMm } from './example.ts'

/**
 * Figures of an independent solver for the same model (same iron, wheel, motion; see example.ts), to the digits it gave.
 * They were not fitted to this engine.
 */
describe('an independent solver', () => {
  it.each([
    [57, 9, 0.3346, 0.3348, 0.4059],
    [115, 17, 0.334, 0.3343, 0.4058],
    [229, 33, 0.3339, 0.3341, 0.4058],
  ])('two turns, 120 sweeps, %i x %i nodes: relief %f left, %f right, middle set back by %f', (...figures) => {
    const [across, through, left, right, recession] = figures
    const edge = edgeOfState(ground(exampleJob({ grid: { across, through } })))
    expect(Math.abs(edge.reliefLeftMm - left)).toBeLessThan(1e-4)
    expect(Math.abs(edge.reliefRightMm - right)).toBeLessThan(1e-4)
    expect(Math.abs((edge.edgeVMm[(across - 1) / 2] as number) - recession)).toBeLessThan(1e-4)
  })

  it.each([
    [0.5, 20, 0.123],
    [1, 20, 0.262],
    [2, 20, 0.55],
    [2, 2, 0.419],
    [2, 200, 0.583],
  ])('%f turns, bed of %i N/mm^3, 400 sweeps: relief %f', (turns, bedStiffnessNPerMm3, relief) => {
    const motion = { sweeps: 400, stopTurnsLeft: turns, stopTurnsRight: turns, bedStiffnessNPerMm3 }
    // The figures have three digits; the corners differ by up to 3 um by the side that the grind ended on.
    const { reliefLeftMm, reliefRightMm } = edgeOfState(ground(exampleJob({ motion })))
    expect(Math.abs(reliefLeftMm - relief)).toBeLessThan(1e-3)
    expect(Math.abs(reliefRightMm - relief)).toBeLessThan(4e-3)
  })

  it('one turn right, two left: 0.295 right, 0.476 left', () => {
    const edge = edgeOfState(ground(exampleJob({ motion: { sweeps: 400, stopTurnsLeft: 2, stopTurnsRight: 1 } })))
    expect(edge.reliefRightMm).toBeCloseTo(0.295, 3)
    expect(edge.reliefLeftMm).toBeCloseTo(0.476, 3)
  })

  it('halfway out it has 0.47 of the corner, a roof with a soft ridge, where an arc has a quarter', () => {
    const { edgeVMm } = edgeOfState(ground(exampleJob({ motion: { sweeps: 400 } })))
    const middle = edgeVMm[28] as number
    const corner = (edgeVMm[0] as number) - middle
    // Where halfway is read between which nodes moves the second digit.
    expect(Math.abs(((edgeVMm[14] as number) - middle) / corner - 0.47)).toBeLessThan(0.015)
  })

  it('the relief is nearly proportional to the turns, about 0.9 of tan(stop) x w/2', () => {
    for (const turns of [1, 2, 3]) {
      const motion = { sweeps: 400, stopTurnsLeft: turns, stopTurnsRight: turns }
      const share = reliefMm(ground(exampleJob({ motion }))) / (((0.8 * turns) / 75) * 28.5)
      expect(share).toBeGreaterThan(0.85)
      expect(share).toBeLessThan(0.95)
    }
  })

  it('the heel is not touched at first', () => {
    const soon = ground(exampleJob(), 5)
    for (let i = 0; i < soon.acrossCount; i++) expect(soon.vMm[9 * i + 8]).toBe(soon.vStartMm[9 * i + 8])
  })
})
