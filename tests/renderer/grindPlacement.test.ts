import { expect, test } from 'vitest'
import type { Job } from '../../geometry/job.ts'
import { jobSchema } from '../../geometry/job.ts'
import { type SetUp, setUpOf } from '../../geometry/setUp.ts'
import {
  barAxisMm,
  machineFigures,
  placeBase,
  placeBladeOnBase,
  setUpTiltRad,
  under,
} from '../../renderer/scene/placement.ts'

const jobOf = (fixture: Partial<Job['fixture']> = {}, barOffsetMm = 0): Job =>
  jobSchema.parse({
    version: 1,
    blade: { widthMm: 57, thicknessMm: 3.2, seatAngleDeg: 12, bevelSide: 'up', currentBevelDeg: 25 },
    station: { wheelDiameterMm: 250, wheelWidthMm: 50, barDiameterMm: 12, barOffsetMm },
    fixture: { kind: 'steered', seatOffsetMm: 15, guideArmMm: 75, screwPitchMm: 0.8, ...fixture },
    aim: { bevelAngleDeg: 25, projectionMm: 130, reliefMm: 0.5 },
  })

interface Pose {
  readonly tiltRad: number
  readonly yawRad: number
  readonly traverseMm: number
}

const setUpFor = (job: Job): SetUp => {
  const setUp = setUpOf(job)
  if (!setUp.ok) throw new Error(setUp.problems[0]?.code)
  return setUp.value
}

const placer = (job: Job, pose: Pose) => {
  const figures = machineFigures(job, setUpFor(job))
  const base = new Float64Array(16)
  const blade = new Float64Array(16)
  placeBase(figures, pose, base)
  placeBladeOnBase(figures, pose.yawRad, blade)
  return {
    figures,
    ofBase: (u: number, v: number, n: number) => under(base, u, v, -n),
    ofBlade: (u: number, v: number, n: number) => under(base, ...under(blade, u, v, -n)),
  }
}

const fromAxisMm = ([, y, z]: readonly [number, number, number]): number => Math.hypot(y, z)

test.each([0, 40, 120])('with the bar %i mm to the side, the unworn edge lies on the wheel', (barOffsetMm) => {
  const job = jobOf({}, barOffsetMm)
  const tiltRad = setUpTiltRad(setUpFor(job))
  const { ofBlade, ofBase, figures } = placer(job, { tiltRad, yawRad: 0, traverseMm: 3 })
  for (const u of [-28.5, 0, 28.5]) {
    const point = ofBlade(u, 0, 0)
    expect(Math.abs(fromAxisMm(point) - 125)).toBeLessThan(1e-6)
    expect(point[0]).toBeCloseTo(u + 3, 9)
    expect(point[2], 'towards the operator').toBeGreaterThan(0)
  }
  const bar = ofBase(0, 130, 15)
  expect(bar[1]).toBeCloseTo(barAxisMm(figures)[0], 9)
  expect(bar[2]).toBeCloseTo(barOffsetMm, 9)
})

test('the bevel is tangent to the wheel at the edge', () => {
  const job = jobOf()
  const { ofBlade } = placer(job, { tiltRad: setUpTiltRad(setUpFor(job)), yawRad: 0, traverseMm: 0 })
  const b = (25 * Math.PI) / 180
  // A step of s along the tangent leaves the circle by s^2 / 2R only.
  const step = 0.01
  const moved = ofBlade(0, step * Math.cos(b), step * Math.sin(b))
  expect(Math.abs(fromAxisMm(moved) - 125)).toBeLessThan(1e-6)
})

test('any pose has the distance from the axis and the place along it that the engine reckons', () => {
  const job = jobOf({ pivotSetbackMm: 7, pivotOffsetMm: -3 })
  const pose = { tiltRad: 0.51, yawRad: 0.021, traverseMm: -8 }
  const { ofBlade, figures } = placer(job, pose)
  const { projectionMm: P, seatOffsetMm: o, barDistanceMm: C, pivotUMm, pivotVMm } = figures
  const [u, v, n] = [21, 1.3, 0.9]
  // geometry.ts, contact: d, h and x of a node.
  const [s, c] = [Math.sin(pose.yawRad), Math.cos(pose.yawRad)]
  const d = pivotVMm - (P - C * Math.cos(pose.tiltRad)) + (v - pivotVMm) * c - (u - pivotUMm) * s
  const h = n - (o + C * Math.sin(pose.tiltRad))
  const x = pose.traverseMm + pivotUMm + (u - pivotUMm) * c + (v - pivotVMm) * s
  const point = ofBlade(u, v, n)
  expect(fromAxisMm(point)).toBeCloseTo(Math.hypot(d, h), 9)
  expect(point[0]).toBeCloseTo(x, 9)
})

test('yaw to the right takes the right corner back from the wheel', () => {
  const job = jobOf()
  const tiltRad = setUpTiltRad(setUpFor(job))
  const { ofBlade } = placer(job, { tiltRad, yawRad: 0.02, traverseMm: 0 })
  expect(fromAxisMm(ofBlade(28.5, 0, 0))).toBeLessThan(fromAxisMm(ofBlade(-28.5, 0, 0)))
})

test('lifting turns the edge up towards the operator', () => {
  const job = jobOf()
  const tiltRad = setUpTiltRad(setUpFor(job)) + (118 * Math.PI) / 180
  const { ofBlade, ofBase } = placer(job, { tiltRad, yawRad: 0, traverseMm: 0 })
  expect(ofBlade(0, 0, 0)[1]).toBeGreaterThan(ofBase(0, 130, 15)[1] + 80)
  expect(ofBlade(0, 0, 0)[2]).toBeGreaterThan(0)
})
