import { describe, expect, it } from 'vitest'
import { bandOf, burrAllAlong, leastFromEdgeMm } from '../../geometry/band.ts'
import { advance, type GrindState } from '../../geometry/grind.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import { begin, type Changes, exampleJob, found } from './example.ts'

const R = 125
const THICKNESS = 3.2

/** A square fixture on a wide wheel, bevel steeper than the wheel would cut: it lands towards the heel, as when freshening. */
const freshening: Changes = {
  fixture: { kind: 'square' },
  station: { wheelWidthMm: 80 },
  blade: { currentBevelDeg: 32 },
  aim: { task: 'freshen', bandMm: 0.4 },
  motion: { stepsPerSweep: 12, sweeps: 400 },
}

/** Where the wheel's circle meets a flat bevel that it is pressed into: places along the bevel from the edge (mm). */
const chordAlong = (bevelRad: number, [centreV, centreN]: readonly [number, number]): readonly [number, number] => {
  // Points of the bevel are s (cos b, sin b); |s e - c| = R is a square equation in s.
  const along = centreV * Math.cos(bevelRad) + centreN * Math.sin(bevelRad)
  const half = Math.sqrt(R * R - (centreV * centreV + centreN * centreN - along * along))
  return [along - half, along + half]
}

/** The wheel's axis in the blade frame at the last step: v = P - C cos tilt, n = o + C sin tilt. */
const axisOf = ({ tiltRad, barDistanceMm }: GrindState): readonly [number, number] => [
  130 - barDistanceMm * Math.cos(tiltRad),
  15 + barDistanceMm * Math.sin(tiltRad),
]

describe.each([
  { presentDeg: 26.5, lands: 'in the middle of the bevel, reaches the heel and then the edge' },
  { presentDeg: 32, lands: 'on the heel' },
])('a bevel of $presentDeg degrees, where the wheel lands $lands', ({ presentDeg }) => {
  const bevelRad = (presentDeg * Math.PI) / 180
  const bevelMm = THICKNESS / Math.sin(bevelRad)
  const job = exampleJob({
    ...freshening,
    blade: { currentBevelDeg: presentDeg },
    grid: { across: 5, through: 65 },
    motion: { stepsPerSweep: 12, bedStiffnessNPerMm3: 2000 },
  })

  it('the band ends where circle and flat bevel meet, within a tenth of a node', () => {
    const { state, motion } = begin(job)
    for (const sweeps of [1, 4, 15, 40, 60]) {
      found(advance(state, motion, sweeps * motion.stepsPerSweep))
      const [near, far] = chordAlong(bevelRad, axisOf(state))
      const { fromEdgeMm, fromHeelMm } = bandOf(state, 2) ?? { fromEdgeMm: Number.NaN, fromHeelMm: Number.NaN }
      expect(Math.abs(fromEdgeMm - Math.max(near, 0))).toBeLessThan((0.1 * bevelMm) / 64)
      expect(Math.abs(fromHeelMm - Math.max(bevelMm - far, 0))).toBeLessThan((0.1 * bevelMm) / 64)
    }
  })
})

it('a first cut in the middle of a flat bevel has the chord (12 R volume / width)^(1/3)', () => {
  // Segment of chord c: depth c^2 / 8 R, area 2/3 c x depth.
  const job = exampleJob({
    ...freshening,
    blade: { currentBevelDeg: 26.5 },
    grid: { across: 5, through: 65 },
    motion: { stepsPerSweep: 12, bedStiffnessNPerMm3: 2000 },
  })
  const { state, motion } = begin(job)
  found(advance(state, motion, 5 * motion.stepsPerSweep))
  const band = bandOf(state, 2)
  const chordMm = THICKNESS / Math.sin((26.5 * Math.PI) / 180) - (band?.fromEdgeMm ?? 0) - (band?.fromHeelMm ?? 0)
  expect(Math.abs(chordMm / ((12 * R * 5 * 0.5) / 57) ** (1 / 3) - 1)).toBeLessThan(0.01)
})

describe('freshening', () => {
  it('leaves the edge where it was, to the last bit, until the band reaches it', () => {
    const { state, motion } = begin(exampleJob({ ...freshening, grid: { across: 21, through: 33 } }))
    let reachedSweep = 0
    for (let sweep = 1; sweep <= 400 && reachedSweep === 0; sweep++) {
      found(advance(state, motion, motion.stepsPerSweep))
      const edgeLost = Array.from(
        { length: 21 },
        (_, i) => (state.vMm[i * 33] as number) - (state.vStartMm[i * 33] as number),
      )
      if (leastFromEdgeMm(state) > 0) expect(edgeLost.every((loss) => loss === 0)).toBe(true)
      else reachedSweep = sweep
    }
    // Not at once, and not never.
    expect(reachedSweep).toBeGreaterThan(20)
    expect(burrAllAlong(state)).toBe(true)
  })

  it('tells to stop at the first sweep whose band is as near to the edge as wanted, edge untouched', () => {
    const job = exampleJob({
      ...freshening,
      aim: { task: 'freshen', bandMm: 0.4, reliefMm: 0 },
      grid: { across: 11, through: 33 },
    })
    const { stopSweep } = found(solveJob(job)).band
    const { state, motion } = begin(job)
    found(advance(state, motion, ((stopSweep ?? 0) - 1) * motion.stepsPerSweep))
    expect(leastFromEdgeMm(state)).toBeGreaterThan(0.4)
    found(advance(state, motion, motion.stepsPerSweep))
    expect(leastFromEdgeMm(state)).toBeLessThanOrEqual(0.4)
    expect(leastFromEdgeMm(state)).toBeGreaterThan(0)
    for (let i = 0; i < 11; i++) expect(state.vMm[i * 33]).toBe(0)
  })
})
