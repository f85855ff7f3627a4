import { describe, expect, it } from 'vitest'
import { setUpOf } from '../../geometry/setUp.ts'
import { type Changes, edgeOfState, exampleJob, found, ground } from './example.ts'

/** A grid and a number of sweeps at which the example is formed to a hundredth. */
const GRID = { across: 29, through: 7 }
const SWEEPS = 300
const deg = Math.PI / 180
const BEVEL = 25 * deg
const HALF_MM = 28.5

/** The edge that a changed example leaves. */
const edge = (changes: Changes) =>
  edgeOfState(ground(exampleJob({ grid: GRID, ...changes, motion: { sweeps: SWEEPS, ...changes.motion } })))
const relief = (changes: Changes): number => {
  const { reliefLeftMm, reliefRightMm } = edge(changes)
  return (reliefLeftMm + reliefRightMm) / 2
}

/** A square fixture on a wheel that reaches past the corners. */
const square = (errors: NonNullable<Changes['errors']>): Changes => ({
  fixture: { kind: 'square' },
  station: { wheelWidthMm: 80 },
  motion: { traverseMm: 0 },
  errors,
})

describe('errors of the set-up, on a square fixture', () => {
  it.each(['mountingAskewDeg', 'barAskewDeg'])('%s of half a degree leaves the edge half a degree askew', (error) => {
    expect(edge(square({ [error]: 0.5 })).skewDeg).toBeCloseTo(0.5, 2)
    expect(edge(square({ [error]: -0.5 })).skewDeg).toBeCloseTo(-0.5, 2)
  })

  it('a bar half a degree out of level slants the edge by sin / tan b', () => {
    const { reliefRightMm } = edge(square({ barRollDeg: 0.5 }))
    expect(reliefRightMm / ((2 * HALF_MM * Math.sin(0.5 * deg)) / Math.tan(BEVEL))).toBeCloseTo(1, 1)
  })

  it('a crown of 0.02 mm hollows the edge by crown / sin b, a cone slants it', () => {
    // Over the wheel's 80 mm the crown falls by (57/80)^2 of 0.02 mm to the iron's corners.
    const crowned = edge(square({ wheelCrownMm: 0.02 })).edgeVMm
    const hollowMm = (crowned[14] as number) - ((crowned[0] as number) + (crowned[28] as number)) / 2
    expect(hollowMm / ((0.02 * (57 / 80) ** 2) / Math.sin(BEVEL))).toBeCloseTo(1, 1)
    // Left higher than right by 2 x 0.02 x 57 / 80: the left corner is ground back further.
    const coned = edge(square({ wheelConeMm: 0.02 }))
    expect(coned.reliefLeftMm / ((0.04 * (57 / 80)) / Math.sin(BEVEL))).toBeCloseTo(1, 1)
  })
})

describe('errors of the set-up, on a steered fixture', () => {
  const plain = relief({})

  it('a pivot that leans two degrees makes the edge steeper by cos e + sin e / tan b', () => {
    const steeper = Math.cos(2 * deg) + Math.sin(2 * deg) / Math.tan(BEVEL)
    expect(relief({ errors: { pivotTiltDeg: 2 } }) / plain).toBeCloseTo(steeper, 1)
    expect(steeper).toBeCloseTo(1.074, 3)
  })

  it('a lash of 0.1 mm counts as free play: an eighth of a turn', () => {
    const asTurns = relief({ motion: { stopTurnsLeft: 2.125, stopTurnsRight: 2.125 } })
    expect(relief({ errors: { stopLashMm: 0.1 } })).toBeCloseTo(asTurns, 9)
  })

  it('a tenth of a degree of unwanted roll moves the corners towards 0.107 mm, and by more than half of it in time', () => {
    const moreMm = relief({ errors: { parasiticRollDeg: 0.1 } }) - plain
    const most = (HALF_MM * Math.sin(0.1 * deg)) / Math.tan(BEVEL)
    expect(most).toBeCloseTo(0.107, 3)
    expect(moreMm).toBeGreaterThan(0.5 * most)
    expect(moreMm).toBeLessThan(most)
  })
})

describe('how the blade lies on its fixture', () => {
  const offset = (changes: Changes) => found(setUpOf(exampleJob(changes)))

  it('on its bevel side its thickness is added to the offset', () => {
    const onBack = offset({})
    const onBevel = offset({ fixture: { seatsOn: 'bevelSide', seatOffsetMm: 15 - 3.2 } })
    expect(onBevel.barDistanceMm).toBeCloseTo(onBack.barDistanceMm, 12)
    // The triangle's slope by the offset is 0.363 deg/mm, so 3.2 mm of thickness is 1.16 degrees.
    const thicker = offset({
      fixture: { seatsOn: 'bevelSide', seatOffsetMm: 15 },
      aim: { bevelAngleDeg: null, projectionMm: 130, barDistanceMm: onBack.barDistanceMm },
    })
    expect(thicker.bevelRad / deg - 25).toBeCloseTo(1.16, 1)
  })

  it('a taper leans the upper face: half a degree over 130 mm takes 1.13 mm off the offset', () => {
    const flat = offset({ fixture: { seatsOn: 'bevelSide', seatOffsetMm: 11.8 } })
    const tapered = offset({ blade: { taperDeg: 0.5 }, fixture: { seatsOn: 'bevelSide', seatOffsetMm: 11.8 } })
    expect(flat.seatOffsetMm - tapered.seatOffsetMm).toBeCloseTo(130 * Math.tan(0.5 * deg), 2)
  })

  it('any two of bevel, projection and bar give the third back, tapered and on the bevel side', () => {
    const lying = { blade: { taperDeg: 0.5 }, fixture: { seatsOn: 'bevelSide', seatOffsetMm: 11.8 } } as const
    const { barDistanceMm } = offset(lying)
    const byProjection = offset({ ...lying, aim: { bevelAngleDeg: null, projectionMm: 130, barDistanceMm } })
    const byBevel = offset({ ...lying, aim: { bevelAngleDeg: 25, projectionMm: null, barDistanceMm } })
    expect(byProjection.bevelRad / deg).toBeCloseTo(25, 9)
    expect(byBevel.projectionMm).toBeCloseTo(130, 9)
  })
})

it('curved work wears the face of the wheel hollow where it takes most', () => {
  const state = ground(exampleJob({ grid: GRID, station: { grindingRatio: 20 }, motion: { sweeps: SWEEPS } }))
  const { heightMm, halfWidthMm, radiusMm, stepMm } = state.rim
  const lossMm3 = heightMm.reduce((sum, h) => sum - h, 0) * stepMm * 2 * Math.PI * radiusMm
  expect(lossMm3).toBeCloseTo(state.volumeRemovedMm3 / 20, 6)
  expect(heightMm[32]).toBeLessThan(heightMm[0] as number)
  expect(halfWidthMm).toBe(25)
})
