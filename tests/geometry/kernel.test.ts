import { describe, expect, it } from 'vitest'
import { nearestNode } from '../../geometry/contact.ts'
import { envelopeSurface } from '../../geometry/envelope.ts'
import { freedomOf } from '../../geometry/freedom.ts'
import { advance } from '../../geometry/grind.ts'
import type { Job } from '../../geometry/job.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { type CutPose, cutBlade } from '../support/kernel.ts'
import { begin, type Changes, exampleJob, found } from './example.ts'

/** See tests/support/kernel.ts. Along the blade the facets' error counts 1 / sin b as much. */
const R = 125
const FACETS = 512
const BEVEL = (25 * Math.PI) / 180
const facetMm = (R * (1 - Math.cos(Math.PI / FACETS))) / Math.sin(BEVEL)
const stock = { widthMm: 57, thicknessMm: 3.2, bevelRad: null }

const steady: CutPose = {
  axisVMm: -R * Math.sin(BEVEL),
  axisNMm: R * Math.cos(BEVEL),
  traverseMm: 0,
  yawRad: 0,
  rollRad: 0,
  throughUMm: 0,
  throughVMm: 0,
  throughNMm: 0,
}

const COUNT = 41

const constantDepth: readonly (Changes & {
  readonly name: string
  readonly leftDeg: number
  readonly rightDeg: number
  pose(rad: number): CutPose
})[] = [
  {
    name: 'steered, equal stops',
    leftDeg: 1.2,
    rightDeg: 1.2,
    motion: { yawLeftDeg: 1.2, yawRightDeg: 1.2 },
    pose: (yawRad) => ({ ...steady, yawRad, throughVMm: 130 }),
  },
  {
    name: 'steered, unequal stops, pivot off the centre line and set back',
    leftDeg: 0.6,
    rightDeg: 1.5,
    motion: { yawLeftDeg: 0.6, yawRightDeg: 1.5 },
    fixture: { pivotOffsetMm: 7, pivotSetbackMm: 20 },
    pose: (yawRad) => ({ ...steady, yawRad, throughUMm: 7, throughVMm: 150 }),
  },
  {
    name: 'rocking, axis above the back and off the centre line',
    leftDeg: 1.1,
    rightDeg: 0.7,
    fixture: { kind: 'rocking', rollHeightMm: 6, pivotOffsetMm: -3 },
    motion: { rollLeftDeg: 1.1, rollRightDeg: 0.7 },
    pose: (rollRad) => ({ ...steady, rollRad, throughUMm: -3, throughNMm: 6 }),
  },
  {
    name: 'swing about a pin 90 away',
    leftDeg: 2,
    rightDeg: 1.5,
    fixture: { kind: 'swing', swingRadiusMm: 90, pivotOffsetMm: 2 },
    motion: { yawLeftDeg: 2, yawRightDeg: 1.5 },
    pose: (yawRad) => ({ ...steady, yawRad, throughUMm: 2, throughVMm: 90 }),
  },
]

const surfaceOf = (job: Job) => {
  const setUp = found(setUpOf(job))
  const surface = envelopeSurface(job, setUp, found(freedomOf(job, setUp)))
  if (surface === null) throw new Error('no stops')
  return surface
}

const evenly = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, k) => from + ((to - from) * k) / (count - 1))

/** Where the facets' error lies: never cut too much, on the mean about two thirds of the most. */
const expectShortBy = (shortMm3: number, mostMm: number): void => {
  const mostMm3 = mostMm * stock.widthMm * stock.thicknessMm
  expect(shortMm3).toBeGreaterThan(0.4 * mostMm3)
  expect(shortMm3).toBeLessThan(0.9 * mostMm3)
}

describe.each(constantDepth)('$name, cuts at constant depth', ({ leftDeg, rightDeg, pose, ...changes }) => {
  const surface = surfaceOf(exampleJob(changes))
  const turns = evenly((-leftDeg * Math.PI) / 180, (rightDeg * Math.PI) / 180, COUNT)
  const kernel = cutBlade(stock, R, FACETS, turns.map(pose))

  it('edge and bevel are where the closed form says, within the facets of the kernel', () => {
    // Between two of the kernel's turns the closed form cuts deeper by up to 150 x half a step squared / 2: below 0.1 um.
    for (const n of [0, 0.8, 1.6, 3.2])
      for (const u of evenly(-28.5, 28.5, 39)) {
        const deeperMm = surface(u, n).vMm - kernel.at(u, n)
        expect(deeperMm).toBeGreaterThan(-1e-5)
        expect(deeperMm).toBeLessThan(facetMm + 1e-4)
      }
  })

  it('takes the volume that the closed form says, within the facets of the kernel', () => {
    const [across, through] = [400, 40]
    let meanMm = 0
    for (let i = 0; i < across; i++)
      for (let j = 0; j < through; j++)
        meanMm += surface(57 * ((i + 0.5) / across - 0.5), (3.2 * (j + 0.5)) / through).vMm / (across * through)
    const exactMm3 = (meanMm + 2) * stock.widthMm * stock.thicknessMm
    expectShortBy(exactMm3 - (kernel.startVolumeMm3 - kernel.volumeMm3), facetMm)
  })
})

/** A stiff bed in large bites leaves next to nothing pressed in: the field is then what the poses cut. */
const stiff = { bedStiffnessNPerMm3: 2000, removalPerSweepMm3: 5, stepsPerSweep: 12, sweeps: 3 }
const fine = { across: 113, through: 17 }
const wide = { wheelWidthMm: 120 }

const grinds: readonly (Changes & { readonly name: string })[] = [
  {
    name: 'steered',
    motion: { ...stiff, stopTurnsLeft: 1 },
    fixture: { pivotOffsetMm: 4, pivotSetbackMm: 10 },
  },
  {
    name: 'rocking',
    motion: { ...stiff, rollLeftDeg: 4, rollRightDeg: 2 },
    fixture: { kind: 'rocking', rollHeightMm: 40, pivotOffsetMm: -2 },
  },
  {
    name: 'swing',
    motion: { ...stiff, loadN: 100, removalPerSweepMm3: 20, yawLeftDeg: 1.2, yawRightDeg: 0.8 },
    fixture: { kind: 'swing', swingRadiusMm: 110, pivotOffsetMm: 2 },
  },
]

describe.each(grinds)('$name, a grind on a stiff bed', (changes) => {
  const job = exampleJob({ ...changes, station: wide, grid: fine })
  const { state, motion } = begin(job)
  const { projectionMm, barDistanceMm, seatOffsetMm } = found(setUpOf(job))
  const pivotVMm = found(freedomOf(job, found(setUpOf(job)))).pivotToEdgeMm
  const poses: CutPose[] = []
  let pressedMm = 0
  for (let step = 0; step < stiff.sweeps * stiff.stepsPerSweep; step++) {
    const before = state.vMm.slice()
    found(advance(state, motion, 1))
    pressedMm = Math.max(pressedMm, nearestNode(state, before, state.weighing.scales.placed)?.depthMm ?? 0)
    poses.push({
      axisVMm: projectionMm - barDistanceMm * Math.cos(state.tiltRad),
      axisNMm: seatOffsetMm + barDistanceMm * Math.sin(state.tiltRad),
      traverseMm: state.traverseMm,
      yawRad: state.yawRad,
      rollRad: state.rollRad,
      throughUMm: job.fixture.pivotOffsetMm,
      throughVMm: pivotVMm,
      throughNMm: job.fixture.rollHeightMm,
    })
  }
  const kernel = cutBlade({ ...stock, bevelRad: BEVEL }, R, FACETS, poses)
  /** Of what is pressed in, wear leaves 1 / (1 + K k_w) (see effectiveStiffness). */
  const leftMm =
    pressedMm / (1 + (motion.removalPerStepMm3 / motion.loadN) * stiff.bedStiffnessNPerMm3) / Math.sin(BEVEL)

  it('leaves every node where the kernel, cutting at the same poses, leaves the blade', () => {
    let deepMm = 0
    for (let i = 0; i < fine.across; i += 4)
      for (let j = 0; j < fine.through; j += 2) {
        const v = state.vMm[i * fine.through + j] as number
        const deeperMm = v - kernel.at(state.uMm[i] as number, state.nMm[j] as number)
        deepMm = Math.max(deepMm, v - (state.vStartMm[i * fine.through + j] as number))
        expect(deeperMm).toBeGreaterThan(-leftMm - 1e-5)
        expect(deeperMm).toBeLessThan(facetMm + 1e-5)
      }
    expect(leftMm).toBeLessThan(facetMm)
    expect(deepMm).toBeGreaterThan(20 * facetMm)
  })

  it('takes the same volume, within the facets of the kernel', () => {
    const lessMm3 = state.volumeRemovedMm3 - (kernel.startVolumeMm3 - kernel.volumeMm3)
    const areaMm2 = stock.widthMm * stock.thicknessMm
    expect(lessMm3).toBeGreaterThan(-leftMm * areaMm2)
    expect(lessMm3).toBeLessThan(facetMm * areaMm2)
    expect(state.volumeRemovedMm3).toBeGreaterThan(10 * facetMm * areaMm2)
  })
})
