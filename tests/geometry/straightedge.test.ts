import { describe, expect, it, test } from 'vitest'
import { edgeRow, meanReliefMm } from '../../geometry/edge.ts'
import { expectedLeaves } from '../../geometry/expectedLeaves.ts'
import { readLeaves } from '../../geometry/measure.ts'
import { solveJob } from '../../geometry/solveJob.ts'
import {
  gapUnder,
  goesUnder,
  type Rest,
  restUnder,
  rockOf,
  type SteelLine,
  thickestLeafMm,
} from '../../geometry/straightedge.ts'
import { seeded } from '../support/seeded.ts'
import { edgeOfState, exampleJob, found, ground } from './example.ts'

const HALF_MM = 28.5
const POINTS = 401
/** Slopes tried each way. */
const TRIED = 4000
const line = (backAt: (u: number) => number, points = POINTS): SteelLine => {
  const atMm = Array.from({ length: points }, (_, i) => HALF_MM * ((2 * i) / (points - 1) - 1))
  return { atMm, backMm: atMm.map(backAt) }
}
const arc = line((u) => 0.5 * (u / HALF_MM) ** 2)
const roof = line((u) => 0.5 * Math.abs(u / HALF_MM))
const hollow = line((u) => -0.2 * (u / HALF_MM) ** 2)
const flat = line((u) => 1 + 0.003 * u)

const corners = (steel: SteelLine, press: number): readonly [number, number] => {
  const rest = restUnder(steel, press)
  return [gapUnder(steel, rest, -HALF_MM), gapUnder(steel, rest, HALF_MM)]
}

/** The line that lies under all the steel and comes nearest to it at a place, by trying slopes: what a weight there finds. */
const pressedByTrying = ({ atMm, backMm }: SteelLine, placeMm: number, most: number): Rest => {
  let best: Rest = { slope: 0, atZeroMm: Number.NEGATIVE_INFINITY, firstMm: 0, lastMm: 0 }
  for (let k = -TRIED; k <= TRIED; k++) {
    const slope = (k / TRIED) * most
    const atZeroMm = Math.min(...Array.from(backMm, (v, i) => v - slope * (atMm[i] as number)))
    if (atZeroMm + slope * placeMm > best.atZeroMm + best.slope * placeMm) best = { ...best, slope, atZeroMm }
  }
  return best
}

describe('where it comes to lie', () => {
  it.each([
    ['arc', arc],
    ['roof', roof],
    ['hollow', hollow],
    ['flat', flat],
    ['lopsided', line((u) => 0.4 * (u / HALF_MM) ** 2 + 0.01 * u)],
    ['rough', line(seededRough(), 41)],
  ])('on an edge that is %s, as a dense search for the line nearest under a weight finds', (_name, steel) => {
    for (const [press, placeMm] of [
      [-1, -HALF_MM + 1e-4],
      [1, HALF_MM - 1e-4],
    ] as const) {
      const tried = pressedByTrying(steel, placeMm, 0.25)
      const rest = restUnder(steel, press)
      expect(Math.abs(rest.slope - tried.slope)).toBeLessThanOrEqual(0.25 / TRIED)
      for (const at of [-HALF_MM, 0, HALF_MM]) {
        expect(rest.atZeroMm + rest.slope * at).toBeCloseTo(tried.atZeroMm + tried.slope * at, 2)
      }
    }
  })

  it('never lies in the steel, however it is held, and always touches it', () => {
    for (const steel of [arc, roof, hollow, flat]) {
      for (const press of [-1, -0.6, 0, 0.3, 1]) {
        const rest = restUnder(steel, press)
        const overs = Array.from(steel.atMm, (u, i) => (steel.backMm[i] as number) - rest.atZeroMm - rest.slope * u)
        expect(Math.abs(Math.min(...overs))).toBeLessThan(1e-12)
      }
    }
  })
})

/** Roughness of a thousandth of a slope between neighbours, over an arc. */
function seededRough() {
  const random = seeded(7)
  return (u: number) => 0.5 * (u / HALF_MM) ** 2 + 0.02 * random()
}

describe('rocking', () => {
  it('an arc balanced gauges 0.5 mm at both corners and touches at the crown', () => {
    expect(corners(arc, 0)).toEqual([0.5, 0.5])
    expect(restUnder(arc, 0)).toMatchObject({ firstMm: 0, lastMm: 0 })
  })

  it('an arc rocked onto a corner gauges 0 and 4 x 0.5 mm there: double in the mean', () => {
    const [left, right] = corners(arc, -1)
    expect(left).toBeCloseTo(0, 12)
    // Pressed a hair inside the corner it lies on the last chord, 57 / 400 mm long: 2 (1 - 1 / 400).
    expect(right).toBeCloseTo(2 * (1 - 1 / 400), 10)
    expect((left + right) / 2 / 0.5).toBeCloseTo(2, 2)
    expect(corners(arc, 1)[0]).toBeCloseTo(right, 12)
  })

  it('a roof rocked lies along a flank: 0 and 2 x 0.5 mm', () => {
    const [left, right] = corners(roof, -1)
    expect(left).toBeCloseTo(0, 12)
    expect(right).toBeCloseTo(1, 12)
    const { firstMm, lastMm } = restUnder(roof, -1)
    expect([firstMm, lastMm]).toEqual([-HALF_MM, 0])
  })

  it('between, an arc gauges 0.5 (1 + q)^2 and 0.5 (1 - q)^2', () => {
    const [left, right] = corners(arc, 0.4)
    expect((Math.sqrt(left / 0.5) + Math.sqrt(right / 0.5)) / 2).toBeCloseTo(1, 4)
    expect(left).toBeGreaterThan(right)
  })

  it('a flat edge and a hollow one do not rock; the hollow is touched at both corners', () => {
    for (const steel of [flat, hollow]) {
      const { first, balanced, last } = rockOf(steel)
      expect(first).toBeCloseTo(balanced, 12)
      expect(last).toBeCloseTo(balanced, 12)
      expect(restUnder(steel, -1)).toMatchObject({ firstMm: -HALF_MM, lastMm: HALF_MM })
    }
    expect(gapUnder(hollow, restUnder(hollow, 1), 0)).toBeCloseTo(0.2, 12)
    expect(gapUnder(flat, restUnder(flat, -1), 11)).toBeCloseTo(0, 12)
  })
})

describe('leaves', () => {
  it('one as thick as the gap goes under, one a thousandth thicker does not, none is no leaf', () => {
    expect(goesUnder(0.5, 0.5)).toBe(true)
    expect(goesUnder(0.5, 0.501)).toBe(false)
    expect(goesUnder(0.5, 0)).toBe(false)
  })

  it('the thickest of a set is the last that goes under', () => {
    expect(thickestLeafMm(0.37, 0.05)).toBeCloseTo(0.35, 12)
    expect(thickestLeafMm(0.1 + 0.2, 0.1)).toBeCloseTo(0.3, 12)
    expect(thickestLeafMm(0.04, 0.05)).toBe(0)
  })

  const leavesRead = (steel: SteelLine, press: number) => {
    const rest = restUnder(steel, press)
    const leaf = (u: number) => thickestLeafMm(gapUnder(steel, rest, u), 0.001)
    return found(
      readLeaves({
        widthMm: 57,
        cornerLeftMm: leaf(-HALF_MM),
        cornerRightMm: leaf(HALF_MM),
        halfwayLeftMm: leaf(-HALF_MM / 2),
        halfwayRightMm: leaf(HALF_MM / 2),
        stepMm: 0.001,
      }),
    )
  }

  it('read at the bench they give the relief when balanced, and a range that holds it when rocked', () => {
    expect(leavesRead(arc, 0)).toMatchObject({ reliefMm: 0.5, shape: 'arc' })
    for (const [steel, press] of [
      [arc, -1],
      [arc, 0.5],
      [roof, 1],
    ] as const) {
      const [notice] = leavesRead(steel, press).notices
      expect(Number(notice?.params.leastMm)).toBeLessThan(0.503)
      expect(Number(notice?.params.mostMm)).toBeGreaterThan(0.497)
    }
    expect(leavesRead(arc, -1).notices[0]?.code).toBe('restsOnCorner')
  })
})

test('on a ground edge the leaves balanced are those that the card tells to expect', () => {
  const job = exampleJob({ motion: { sweeps: 60 }, grid: { across: 57, through: 5 } })
  const report = found(solveJob(job))
  const state = ground(job)
  const steel = { atMm: state.uMm, backMm: edgeRow(state.vMm, state.throughCount) }
  const { corner, halfway } = expectedLeaves(report)
  const rest = restUnder(steel, 0)
  // The card counts from a level line, a straightedge from where it balances: alike on an edge alike left and right.
  expect(gapUnder(steel, rest, -HALF_MM)).toBeCloseTo((corner.left + corner.right) / 2, 3)
  expect(gapUnder(steel, rest, HALF_MM / 2)).toBeCloseTo((halfway.left + halfway.right) / 2, 3)
  expect(gapUnder(steel, restUnder(steel, -1), HALF_MM)).toBeGreaterThan(1.9 * meanReliefMm(edgeOfState(state)))
})
