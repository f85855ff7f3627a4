import { Group, Mesh, PlaneGeometry } from 'three'
import type { Job } from '../../geometry/job.ts'
import type { SetUp } from '../../geometry/setUp.ts'
import type { SceneMaterials } from './materials.ts'
import type { MachineFigures } from './placement.ts'
import { block, pin, rod } from './solids.ts'

/**
 * The fixture as a plain schematic. Fixed part: two saddles on the bar, a plate and, where it steers, an upper frame with two
 * posts that hold the set screws. Moving part: a clamp over the back, a pin, a beam with the guide bearing at its upper end.
 * Bearing and screw tips stand free play apart, so that the screw is seen to stop the beam.
 */
export interface FixturePart {
  /** Parts that stay parallel to the wheel, in the base frame. */
  readonly fixed: Group
  /** Parts that yaw with the blade, in the blade frame. */
  readonly moving: Group
  /** Turns a set screw to its free play (mm). */
  setStop(side: 'left' | 'right', freePlayMm: number, turns: number): void
}

/** Radius of the guide bearing that the set screws' tips stop (mm). */
export const BEARING_RADIUS_MM = 9
const SCREW_RADIUS_MM = 2.6
const SCREW_LENGTH_MM = 34
const HEAD_LENGTH_MM = 7
/** Middle of bearing and screws above the back (mm). */
export const STOP_LEVEL_MM = 1
/** How far the clamp stands out beyond the blade on each side (mm). */
const CLAMP_SPARE_MM = 11

/** Between blade and bar, seen from the blade: from..to along z, the bar's side last. */
const underSpans = ({ thicknessMm }: Job['blade'], { seatOffsetMm: o, barRadiusMm }: SetUp) =>
  o > 0
    ? { beam: [-thicknessMm - 4, -thicknessMm] as const, plate: [-o + barRadiusMm - 1, -thicknessMm - 4] as const }
    : { beam: [-thicknessMm - 4, -thicknessMm] as const, plate: [0, -o - barRadiusMm + 1] as const }

const ordered = ([a, b]: readonly [number, number]): readonly [number, number] =>
  b - a >= 1 ? [a, b] : [(a + b) / 2 - 0.5, (a + b) / 2 + 0.5]

const addSaddles = (
  fixed: Group,
  job: Job,
  setUp: SetUp,
  plateZ: readonly [number, number],
  m: SceneMaterials,
): void => {
  const { seatOffsetMm: o, barRadiusMm: rb, projectionMm: P } = setUp
  const halfMm = job.blade.widthMm / 2 + CLAMP_SPARE_MM
  const z: readonly [number, number] = o > 0 ? [-o - rb - 3, plateZ[0] + 1] : [plateZ[1] - 1, -o + rb + 3]
  for (const x of [
    [-halfMm - 4, -halfMm + 9],
    [halfMm - 9, halfMm + 4],
  ] as const) {
    fixed.add(block({ x, y: [P - rb - 5, P + rb + 5], z }, m.fixed))
  }
  fixed.add(block({ x: [-halfMm, halfMm], y: [P - rb - 4, P + rb + 4], z: plateZ }, m.fixed))
}

/** How far the clamp darkens the back below it (mm), and how far off the back that is painted. */
const CLAMP_SHADE_MM = 10
const SHADE_LIFT_MM = 0.06
const CLAMP_HALF_MM = 7

const addClamp = (moving: Group, job: Job, { pivotUMm, pivotVMm }: MachineFigures, m: SceneMaterials): void => {
  const halfMm = job.blade.widthMm / 2 + CLAMP_SPARE_MM
  moving.add(
    block({ x: [-halfMm, halfMm], y: [pivotVMm - CLAMP_HALF_MM, pivotVMm + CLAMP_HALF_MM], z: [0.3, 8] }, m.moving),
  )
  const shade = new Mesh(new PlaneGeometry(job.blade.widthMm, CLAMP_SHADE_MM), m.underClamp)
  shade.position.set(0, pivotVMm - CLAMP_HALF_MM - CLAMP_SHADE_MM / 2, SHADE_LIFT_MM)
  moving.add(shade)
  for (const x of [-halfMm + 5, halfMm - 5]) moving.add(pin([x, pivotVMm], 3.4, [8, 11], m.screw, 24))
  moving.add(pin([pivotUMm, pivotVMm], 2, [8, 8.6], m.screw, 24))
}

/** Half the distance between the posts (mm): screws, bearing and the widest play fit in. */
const postPlaceMm = (job: Job): number => Math.max(job.blade.widthMm / 2 + 4, BEARING_RADIUS_MM + 22)

const addSteering = (
  part: FixturePart,
  job: Job,
  figures: MachineFigures,
  beamZ: readonly [number, number],
  m: SceneMaterials,
): void => {
  const { pivotUMm: u, pivotVMm } = figures
  const guideVMm = pivotVMm + (job.fixture.guideArmMm ?? 0)
  const postMm = postPlaceMm(job)
  const [underMm] = beamZ
  part.moving.add(block({ x: [u - 7, u + 7], y: [pivotVMm - 12, guideVMm + 7], z: beamZ }, m.moving))
  part.moving.add(pin([u, guideVMm], BEARING_RADIUS_MM, [-5 + STOP_LEVEL_MM, 5 + STOP_LEVEL_MM], m.screw, 40))
  part.moving.add(pin([u, guideVMm], 3.5, [beamZ[1], 8 + STOP_LEVEL_MM], m.moving, 24))
  const frameZ: readonly [number, number] = [underMm - 5.5, underMm - 0.5]
  for (const side of [-1, 1]) {
    const x = [u + side * postMm - 6, u + side * postMm + 6] as const
    part.fixed.add(block({ x, y: [pivotVMm - 6, guideVMm + 9], z: frameZ }, m.fixed))
    part.fixed.add(block({ x, y: [guideVMm - 9, guideVMm + 9], z: [frameZ[1] - 1, STOP_LEVEL_MM + 9] }, m.fixed))
  }
  part.fixed.add(block({ x: [u - postMm + 6, u + postMm - 6], y: [guideVMm + 2, guideVMm + 9], z: frameZ }, m.fixed))
}

/** A set screw, its tip at x = 0 and its head towards +x. */
const buildScrew = (m: SceneMaterials): Group => {
  const screw = new Group()
  screw.add(rod([0, SCREW_LENGTH_MM], SCREW_RADIUS_MM, [0, 0], m.screw, 20))
  screw.add(rod([SCREW_LENGTH_MM, SCREW_LENGTH_MM + HEAD_LENGTH_MM], SCREW_RADIUS_MM + 2.4, [0, 0], m.moving, 6))
  return screw
}

/** Where a screw's tip and head stand across (mm). */
export const screwPlaceMm = (side: 'left' | 'right', pivotUMm: number, freePlayMm: number) => {
  const sign = side === 'left' ? -1 : 1
  const tipMm = pivotUMm + sign * (BEARING_RADIUS_MM + freePlayMm)
  return { tipMm, headMm: tipMm + sign * (SCREW_LENGTH_MM + HEAD_LENGTH_MM) }
}

/** Builds the fixture of a job. */
export const buildFixture = (job: Job, setUp: SetUp, figures: MachineFigures, m: SceneMaterials): FixturePart => {
  const screws = { left: buildScrew(m), right: buildScrew(m) }
  const spans = underSpans(job.blade, setUp)
  const part: FixturePart = {
    fixed: new Group(),
    moving: new Group(),
    setStop: (side, freePlayMm, turns) => {
      const screw = screws[side]
      screw.position.x = screwPlaceMm(side, figures.pivotUMm, freePlayMm).tipMm
      screw.rotation.x = turns * 2 * Math.PI
    },
  }
  addSaddles(part.fixed, job, setUp, ordered(spans.plate), m)
  addClamp(part.moving, job, figures, m)
  if (job.fixture.kind !== 'steered') return part
  addSteering(part, job, figures, spans.beam, m)
  const guideVMm = figures.pivotVMm + (job.fixture.guideArmMm ?? 0)
  for (const screw of Object.values(screws)) screw.position.set(0, guideVMm, STOP_LEVEL_MM)
  screws.left.rotation.y = Math.PI
  part.fixed.add(screws.left, screws.right)
  return part
}
