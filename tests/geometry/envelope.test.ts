import { describe, expect, it } from 'vitest'
import { envelopeAt, envelopeOf, envelopeSurface, type SurfacePoint } from '../../geometry/envelope.ts'
import { freedomOf } from '../../geometry/freedom.ts'
import type { Job } from '../../geometry/job.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { type Changes, exampleJob, found } from './example.ts'

/** Closed forms against the highest of many cuts, each worked out here from a rotation and the wheel's circle alone. */
const R = 125
const P = 130
const BEVEL = (25 * Math.PI) / 180
const CENTRE = { v: -R * Math.sin(BEVEL), n: R * Math.cos(BEVEL) }
const CUTS = 4000

const surfaceOf = (job: Job): ((u: number, n: number) => SurfacePoint) => {
  const setUp = found(setUpOf(job))
  const surface = envelopeSurface(job, setUp, found(freedomOf(job, setUp)))
  if (surface === null) throw new Error('no stops')
  return surface
}

/** v where the wheel's upper side stands at a level of the fixture's frame. */
const wheelLine = (n: number): number => CENTRE.v + Math.sqrt(R * R - (n - CENTRE.n) ** 2)

/** v at which a blade yawed by some angle about (pivot, pivotV) meets the wheel at (u, n). */
const yawCut = (u: number, n: number, pivotU: number, pivotV: number, rad: number): number => {
  // A point comes to d = pivotV + (v - pivotV) cos - (u - pivotU) sin along the fixture; solve d = wheelLine for v.
  return pivotV + (wheelLine(n) - pivotV + (u - pivotU) * Math.sin(rad)) / Math.cos(rad)
}

/** The same for a roll about (axisU, axisN), which lifts a point to another level. */
const rollCut = (u: number, n: number, axisU: number, axisN: number, rad: number): number =>
  wheelLine(axisN + (u - axisU) * Math.sin(rad) + (n - axisN) * Math.cos(rad))

const highest = (leftDeg: number, rightDeg: number, cut: (rad: number) => number): number => {
  let most = Number.NEGATIVE_INFINITY
  for (let k = 0; k <= CUTS; k++)
    most = Math.max(most, cut(((-leftDeg + ((leftDeg + rightDeg) * k) / CUTS) * Math.PI) / 180))
  return most
}

/** A cut between two samples lies higher by half its curvature, some 140 mm, times the half step of 1.2e-5 rad squared. */
const SAMPLING_MM = 1e-7

const yaws: readonly (Changes & { name: string; leftDeg: number; rightDeg: number; pivotU: number; pivotV: number })[] =
  [
    { name: 'equal stops', leftDeg: 1.2, rightDeg: 1.2, pivotU: 0, pivotV: P },
    { name: 'unequal stops', leftDeg: 0.5, rightDeg: 1.9, pivotU: 0, pivotV: P },
    { name: 'one stop at zero', leftDeg: 0, rightDeg: 1.5, pivotU: 0, pivotV: P },
    { name: 'pivot off the centre line, set back', leftDeg: 1.2, rightDeg: 0.8, pivotU: 7, pivotV: P + 40 },
    { name: 'short pivot: arcs reach the corners', leftDeg: 14, rightDeg: 14, pivotU: -3, pivotV: P - 30 },
  ]

const levels = [0, 0.4, 1.6, 2.7, 3.2]
const places = [-28.5, -20, -7.3, -1, 0, 0.4, 3, 11, 19.9, 28.5]

const yawJob = ({ leftDeg, rightDeg, pivotU, pivotV }: (typeof yaws)[number]): Job =>
  exampleJob({
    fixture: { pivotOffsetMm: pivotU, pivotSetbackMm: pivotV - P },
    motion: { yawLeftDeg: leftDeg, yawRightDeg: rightDeg },
  })

describe.each(yaws)('yaw, $name', (yaw) => {
  const { leftDeg, rightDeg, pivotU, pivotV } = yaw
  const surface = surfaceOf(yawJob(yaw))

  it('is the highest of the cuts at every level', () => {
    for (const n of levels)
      for (const u of places) {
        const sampled = highest(leftDeg, rightDeg, (rad) => yawCut(u, n, pivotU, pivotV, rad))
        const lead = surface(u, n).vMm - sampled
        expect(lead).toBeGreaterThan(-1e-11)
        expect(lead).toBeLessThan(P * ((((leftDeg + rightDeg) / CUTS) * Math.PI) / 360) ** 2)
      }
  })

  it('has the slopes that differences give', () => expectSlopes(surface))

  it('lies on the torus of major radius L + R sin b, minor R, wherever no stop cuts', () => {
    const major = pivotV - CENTRE.v
    for (const n of levels)
      for (const u of places) {
        const { vMm } = surface(u, n)
        const x = u - pivotU
        const away = Math.hypot(x, pivotV - vMm)
        const inside = Math.abs(x / away) < Math.sin(((x < 0 ? leftDeg : rightDeg) * Math.PI) / 180) - 1e-9
        // In the plane through the pivot's axis the wheel is a circle of radius R about a point `major` away from it.
        const gap = Math.hypot(major - away, n - CENTRE.n) - R
        if (inside) expect(Math.abs(gap)).toBeLessThan(1e-10)
      }
  })
})

/** Central differences; where an arc meets the straight cut of a stop its curvature jumps, which tells by step / (4 L) = 2.5e-7. */
const expectSlopes = (surface: (u: number, n: number) => SurfacePoint): void => {
  const step = 1e-4
  for (const n of [0.2, 1.6, 3])
    for (const u of places) {
      const here = surface(u, n)
      const alongU = (surface(u + step, n).vMm - surface(u - step, n).vMm) / (2 * step)
      const alongN = (surface(u, n + step).vMm - surface(u, n - step).vMm) / (2 * step)
      expect(Math.abs(here.perU - alongU)).toBeLessThan(4e-7)
      expect(Math.abs(here.perN - alongN)).toBeLessThan(4e-7)
    }
}

const rolls = [
  { name: 'axis on the back', leftDeg: 1, rightDeg: 1, axisU: 0, axisN: 0 },
  { name: 'axis above the blade', leftDeg: 1.5, rightDeg: 0.7, axisU: 0, axisN: 9 },
  { name: 'axis inside the blade', leftDeg: 1, rightDeg: 2, axisU: 4, axisN: 1.6 },
  { name: 'axis below the back', leftDeg: 2.5, rightDeg: 3, axisU: -5, axisN: -60 },
]

const rollJob = ({ leftDeg, rightDeg, axisU, axisN }: (typeof rolls)[number]): Job =>
  exampleJob({
    fixture: { kind: 'rocking', rollHeightMm: axisN, pivotOffsetMm: axisU },
    motion: { rollLeftDeg: leftDeg, rollRightDeg: rightDeg },
  })

describe.each(rolls)('roll, $name', (roll) => {
  const { leftDeg, rightDeg, axisU, axisN } = roll
  const surface = surfaceOf(rollJob(roll))

  it('is the highest of the cuts at every level', () => {
    for (const n of levels)
      for (const u of places) {
        const sampled = highest(leftDeg, rightDeg, (rad) => rollCut(u, n, axisU, axisN, rad))
        const lead = surface(u, n).vMm - sampled
        expect(lead).toBeGreaterThan(-1e-11)
        expect(lead).toBeLessThan(SAMPLING_MM)
      }
  })

  it('has the slopes that differences give', () => expectSlopes(surface))
})

describe('figures worked out apart', () => {
  it('1.2 degrees, pivot 130 away: the corner of 57 mm stands 0.568472 back', () => {
    expect(envelopeAt(130, 28.5, Math.tan((1.2 * Math.PI) / 180))).toBeCloseTo(0.568472, 6)
    const job = exampleJob({ motion: { yawLeftDeg: 1.2, yawRightDeg: 1.2 } })
    const setUp = found(setUpOf(job))
    const edge = envelopeOf(job, setUp, found(freedomOf(job, setUp)))
    expect(edge?.reliefLeftMm).toBeCloseTo(0.568472, 6)
    expect(edge?.reliefRightMm).toBeCloseTo(0.568472, 6)
  })

  it('two turns on an arm of 75, pitch 0.8: 0.5784', () => {
    expect(envelopeAt(130, 28.5, 1.6 / 75)).toBeCloseTo(0.5784, 4)
  })

  it.each([
    [1, 1.0538],
    [3, 3.087],
  ])('a roll of %i degree(s) about an axis in the back: the corner stands %f back', (deg, reliefMm) => {
    const surface = surfaceOf(rollJob({ name: '', leftDeg: deg, rightDeg: deg, axisU: 0, axisN: 0 }))
    expect(Math.abs(surface(28.5, 0).vMm - surface(0, 0).vMm - reliefMm)).toBeLessThan(5e-5 * 10 ** (deg === 1 ? 0 : 1))
  })

  it('near the middle a roll has the slope sin(roll) / tan b', () => {
    const surface = surfaceOf(rollJob({ name: '', leftDeg: 1, rightDeg: 1, axisU: 0, axisN: 0 }))
    const slope = (surface(1e-3, 0).vMm - surface(0, 0).vMm) / 1e-3
    expect(slope).toBeCloseTo(Math.sin(Math.PI / 180) / Math.tan(BEVEL), 6)
  })

  it('nothing stops a freehand blade: no envelope', () => {
    const job = exampleJob({ fixture: { kind: 'freehand' } })
    const setUp = found(setUpOf(job))
    expect(envelopeOf(job, setUp, found(freedomOf(job, setUp)))).toBeNull()
  })
})
