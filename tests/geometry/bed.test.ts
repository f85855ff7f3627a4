import { describe, expect, it } from 'vitest'
import { nearestNode } from '../../geometry/contact.ts'
import { advance } from '../../geometry/grind.ts'
import { quantities } from '../../geometry/quantities.ts'
import { begin, exampleJob, found } from './example.ts'

/**
 * Hertz, line contact of two long cylinders (2-D): half width a and greatest pressure p0 for a force F per length,
 * p0 = sqrt(F E' / (2 pi R)), a = sqrt(8 F R / (pi E')), 1/E' = ((1 - nu1^2)/E1 + (1 - nu2^2)/E2) / 2.
 */
const effective = (e1: number, nu1: number, e2: number, nu2: number): number =>
  (2 * e1 * e2) / (e2 * (1 - nu1 * nu1) + e1 * (1 - nu2 * nu2))
const hertz = (perMm: number, R: number, E: number) => ({
  halfMm: Math.sqrt((8 * perMm * R) / (Math.PI * E)),
  peakNPerMm2: Math.sqrt((perMm * E) / (2 * Math.PI * R)),
})

/** What a bed of springs under a cylinder of radius R gives for the same force: F = 2/3 k a^3 / R, p0 = k a^2 / 2 R. */
const bedOf = (perMm: number, R: number, k: number) => {
  const halfMm = ((3 * perMm * R) / (2 * k)) ** (1 / 3)
  return { halfMm, peakNPerMm2: (k * halfMm * halfMm) / (2 * R) }
}

/** Stiffness that gives a bed the half width of Hertz: k = 3 F R / (2 a^3). */
const stiffnessLike = (perMm: number, R: number, E: number): number =>
  (1.5 * perMm * R) / hertz(perMm, R, E).halfMm ** 3

it('NAFEMS/FENET D3613 (Konter 2006), 2-D Hertz: 35 kN/mm, 70 and 210 GPa, R 50: p0 3585 MPa, a 6.21 mm', () => {
  const { halfMm, peakNPerMm2 } = hertz(35_000, 50, effective(70_000, 0.3, 210_000, 0.3))
  expect(peakNPerMm2).toBeCloseTo(3585.36, 1)
  expect(halfMm).toBeCloseTo(6.2146, 3)
})

describe('the bed of springs', () => {
  it('under the same force and with the same half width presses 1.18 times as hard at its middle', () => {
    // Half ellipse against parabola over the same width and force: (3/4) / (2/pi).
    const E = effective(70_000, 0.3, 210_000, 0.3)
    const bed = bedOf(35_000, 50, stiffnessLike(35_000, 50, E))
    const exact = hertz(35_000, 50, E)
    expect(bed.halfMm).toBeCloseTo(exact.halfMm, 9)
    expect(bed.peakNPerMm2 / exact.peakNPerMm2).toBeCloseTo((3 * Math.PI) / 8, 9)
  })

  it('a hard wheel on steel, as Hertz has it, is stiffer than any bed here: grit and blade, not the bulk, make the bed soft', () => {
    // Wheels 15 GPa (soft, resin) to 70 GPa (hard, vitrified), by ring test; steel 200 GPa; 20 N over 57 mm of flat bevel on R 125.
    const perMm = 20 / 57
    const soft = stiffnessLike(perMm, 125, effective(15_000, 0.2, 200_000, 0.3))
    const hard = stiffnessLike(perMm, 125, effective(70_000, 0.2, 200_000, 0.3))
    expect(soft).toBeGreaterThan(quantities.motion.bedStiffnessNPerMm3.max)
    expect(hard).toBeGreaterThan(soft)
  })

  it('the engine presses a flat bevel as the bed has it: chord and peak', () => {
    const { state, motion } = begin(
      exampleJob({
        fixture: { kind: 'square' },
        station: { wheelWidthMm: 80 },
        blade: { currentBevelDeg: 26.5 },
        grid: { across: 5, through: 65 },
        motion: { traverseMm: 0, removalPerSweepMm3: 0.001, bedStiffnessNPerMm3: 200 },
      }),
    )
    found(advance(state, motion, 1))
    const { halfMm, peakNPerMm2 } = bedOf(20 / 57, 125, 200)
    const { patchMm, placed } = state.weighing.scales
    const alongMm = 3.2 / Math.sin((26.5 * Math.PI) / 180) / 64
    const pressed = Array.from({ length: 65 }, (_, j) => patchMm[2 * 65 + j] as number).filter((patch) => patch > 0)
    expect(Math.abs(pressed.length * alongMm - 2 * halfMm)).toBeLessThan(alongMm)
    const deepestMm = nearestNode(state, state.vStartMm, placed)?.depthMm as number
    expect(deepestMm * 200).toBeCloseTo(peakNPerMm2, 2)
    expect(state.pressureNPerMm[2]).toBeCloseTo(20 / 57, 6)
  })
})
