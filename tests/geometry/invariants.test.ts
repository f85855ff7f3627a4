import { describe, expect, it } from 'vitest'
import { advance, type GrindState } from '../../geometry/grind.ts'
import type { Job, JobInput } from '../../geometry/job.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import {
  begin,
  type Changes,
  edgeOfState,
  exampleInput,
  exampleJob,
  found,
  furthestApartMm,
  ground,
  reliefMm,
} from './example.ts'

const grid = { across: 29, through: 5 }
const few = { sweeps: 6, stepsPerSweep: 12 }
const rolls = { rollLeftDeg: 1, rollRightDeg: 0.4 }
const recordedPath = [0, 0.4, 0.9, 1, 0.5, -0.2, -0.7, -0.3, -0.9, -0.1]

/** Every kind of fixture, unequal left and right, with what a station may do besides. */
const kinds: readonly (Changes & { readonly name: string })[] = [
  { name: 'square', grid, motion: few, fixture: { kind: 'square' } },
  { name: 'steered', grid, motion: { ...few, stopTurnsRight: 1 }, fixture: { pivotOffsetMm: 4, pivotSetbackMm: 10 } },
  {
    name: 'rocking',
    grid,
    motion: { ...few, ...rolls },
    fixture: { kind: 'rocking', rollHeightMm: 5, pivotOffsetMm: -2 },
  },
  {
    name: 'swing',
    grid,
    motion: { ...few, yawLeftDeg: 0.6, yawRightDeg: 1.2, removalPerSweepMm3: 0.2 },
    fixture: { kind: 'swing', swingRadiusMm: 130, pivotOffsetMm: 3 },
  },
  { name: 'freehand', grid, motion: { ...few, fingerReachMm: 12 }, fixture: { kind: 'freehand' } },
  { name: 'steered, narrow wheel that wears', grid, motion: few, station: { wheelWidthMm: 25, grindingRatio: 5 } },
  {
    name: 'steered, recorded path, two settings',
    grid,
    motion: {
      ...few,
      path: 'recorded',
      recordedPath,
      sweeps: 3,
      schedule: [{ stopTurnsLeft: 1, stopTurnsRight: 0.5, fingerReachMm: 10, traverseMm: 5, sweeps: 3 }],
    },
  },
  {
    name: 'steered, with every error of the set-up',
    grid,
    motion: few,
    errors: {
      barAskewDeg: 0.3,
      barRollDeg: 0.2,
      wheelConeMm: 0.05,
      wheelCrownMm: 0.03,
      mountingAskewDeg: 0.4,
      pivotTiltDeg: 1,
      parasiticRollDeg: 0.1,
      stopLashMm: 0.1,
    },
    blade: { startEdge: [0.2, 0, 0.05, 0.1] },
  },
]

/** Steel gone between two fields, with the half weights of end nodes counted out here. */
const goneMm3 = ({ vMm, uMm, nMm, acrossCount, throughCount }: GrindState, before: Float64Array): number => {
  const du = (uMm[1] as number) - (uMm[0] as number)
  const dn = (nMm[1] as number) - (nMm[0] as number)
  let sum = 0
  for (let i = 0; i < acrossCount; i++)
    for (let j = 0; j < throughCount; j++) {
      const weight = (i % (acrossCount - 1) === 0 ? 0.5 : 1) * (j % (throughCount - 1) === 0 ? 0.5 : 1)
      sum += weight * ((vMm[i * throughCount + j] as number) - (before[i * throughCount + j] as number))
    }
  return sum * du * dn
}

describe.each(kinds)('$name', (changes) => {
  const job = exampleJob(changes)

  it('removes the volume it was told to, to 1e-9, and no node grows at any step', () => {
    const { state, motion } = begin(job)
    const before = state.vMm.slice()
    for (let step = 0; step < few.sweeps * few.stepsPerSweep; step++) {
      before.set(state.vMm)
      found(advance(state, motion, 1))
      expect(state.vMm.every((v, at) => v >= (before[at] as number))).toBe(true)
    }
    const gone = goneMm3(state, state.vStartMm)
    expect(Math.abs(state.volumeRemovedMm3 / gone - 1)).toBeLessThan(1e-9)
    // A pin takes load off the wheel, so a swung blade may lose less than its share.
    const told = few.sweeps * job.motion.removalPerSweepMm3
    if (job.fixture.kind === 'swing') expect(gone).toBeLessThan(told * (1 + 1e-9))
    else expect(Math.abs(gone / told - 1)).toBeLessThan(1e-9)
  })

  it('is mirrored by mirroring left and right, to 1e-9 mm', () => {
    const right = ground(job, few.sweeps)
    const left = ground(mirrored(job), few.sweeps)
    expect(furthestApartMm(right, right, true)).toBeGreaterThan(1e-6)
    expect(furthestApartMm(right, left, true)).toBeLessThan(1e-9)
  })

  it('is the same to the last bit with load and stiffness both doubled', () => {
    const { loadN, bedStiffnessNPerMm3 } = job.motion
    const motion = { ...job.motion, loadN: 2 * loadN, bedStiffnessNPerMm3: 2 * bedStiffnessNPerMm3 }
    expect(ground({ ...job, motion }, few.sweeps).vMm).toEqual(ground(job, few.sweeps).vMm)
  })

  it('is the same shape with lengths x 2, load x 4, stiffness / 2, volume x 8', () => {
    const small = ground(job, few.sweeps)
    const large = ground(doubled(job), few.sweeps)
    expect(large.vMm.every((v, at) => Math.abs(v / 2 - (small.vMm[at] as number)) < 1e-9)).toBe(true)
  })
})

/** Left and right exchanged: stops, start, path, pivot, starting edge, and the errors that lean to one side. */
const mirrored = (job: Job): Job => {
  const { motion, fixture, errors, blade } = job
  const swap = (setting: Job['motion']['schedule'][number]) => ({
    ...setting,
    stopTurnsLeft: setting.stopTurnsRight,
    stopTurnsRight: setting.stopTurnsLeft,
    yawLeftDeg: setting.yawRightDeg,
    yawRightDeg: setting.yawLeftDeg,
    rollLeftDeg: setting.rollRightDeg,
    rollRightDeg: setting.rollLeftDeg,
  })
  return {
    ...job,
    blade: { ...blade, startEdge: blade.startEdge?.toReversed() ?? null },
    fixture: { ...fixture, pivotOffsetMm: -fixture.pivotOffsetMm },
    motion: {
      ...motion,
      ...swap(motion),
      startSide: motion.startSide === 'right' ? 'left' : 'right',
      recordedPath: motion.recordedPath?.map((place) => -place) ?? null,
      schedule: motion.schedule.map(swap),
    },
    errors: {
      ...errors,
      barAskewDeg: -errors.barAskewDeg,
      barRollDeg: -errors.barRollDeg,
      wheelConeMm: -errors.wheelConeMm,
      mountingAskewDeg: -errors.mountingAskewDeg,
    },
  }
}

const isLength = (key: string): boolean => key.endsWith('Mm')

/** Every length of a job doubled, whatever its section; forces and volumes with them. */
const doubled = (job: Job): Job => {
  const double = (value: unknown, key: string): unknown => {
    if (typeof value === 'number') return isLength(key) ? 2 * value : value
    if (key === 'startEdge' && Array.isArray(value)) return value.map((v: number) => 2 * v)
    if (Array.isArray(value)) return value.map((entry) => double(entry, ''))
    if (value === null || typeof value !== 'object') return value
    return Object.fromEntries(Object.entries(value).map(([inner, entry]) => [inner, double(entry, inner)]))
  }
  const twice = double(job, '') as Job
  const { loadN, bedStiffnessNPerMm3, removalPerSweepMm3 } = job.motion
  return {
    ...twice,
    motion: {
      ...twice.motion,
      loadN: 4 * loadN,
      bedStiffnessNPerMm3: bedStiffnessNPerMm3 / 2,
      removalPerSweepMm3: 8 * removalPerSweepMm3,
    },
  }
}

describe('a wheel narrower than the iron', () => {
  it('leaves what it does not cover to the last bit, and grinds what it covers', () => {
    const state = ground(
      exampleJob({ station: { wheelWidthMm: 20 }, fixture: { kind: 'square' }, motion: { traverseMm: 0 } }),
    )
    const borderMm = 57 / 56 / 2
    for (let i = 0; i < state.acrossCount; i++) {
      const lost = (state.vMm[i * 9 + 4] as number) - (state.vStartMm[i * 9 + 4] as number)
      if (Math.abs(state.uMm[i] as number) - borderMm >= 10) expect(lost).toBe(0)
      else expect(lost).toBeGreaterThan(0.1)
    }
  })

  it('reaches no further than half its width, its traverse and the shift that the yaw gives', () => {
    const state = ground(exampleJob({ station: { wheelWidthMm: 20 }, motion: { traverseMm: 6 } }))
    // Yaw of tan 0.8 x 2 / 75 about a pivot 130 away shifts the edge by 130 sin(yaw) = 2.8 mm.
    const yawRad = Math.atan(1.6 / 75)
    const reachMm = (10 + 6 + 130 * Math.sin(yawRad)) / Math.cos(yawRad) + 57 / 56 / 2
    let untouched = 0
    for (let at = 0; at < state.vMm.length; at++)
      if (Math.abs(state.uMm[Math.floor(at / 9)] as number) > reachMm) {
        expect(state.vMm[at]).toBe(state.vStartMm[at])
        untouched++
      }
    expect(untouched).toBeGreaterThan(9)
  })
})

describe('limits', () => {
  const wide = { wheelWidthMm: 80 }

  it.each([
    { name: 'steered', input: exampleInput({ station: wide, motion: { stopTurnsLeft: 0, stopTurnsRight: 0 } }) },
    { name: 'rocking', input: exampleInput({ station: wide, fixture: { kind: 'rocking' } }) },
    { name: 'square', input: exampleInput({ station: wide, fixture: { kind: 'square' } }) },
  ] satisfies { name: string; input: JobInput }[])('$name: stops at zero leave a straight edge', ({ input }) => {
    const { edgeVMm } = edgeOfState(ground(found(parseJob(input))))
    expect(Math.min(...edgeVMm)).toBeGreaterThan(0.3)
    expect(Math.max(...edgeVMm) - Math.min(...edgeVMm)).toBeLessThan(1e-9)
  })

  it('a stiffer and stiffer bed tends to a relief below tan(stop) x w/2', () => {
    const reliefs = [2, 20, 200, 2000].map((bedStiffnessNPerMm3) =>
      reliefMm(ground(exampleJob({ motion: { sweeps: 400, bedStiffnessNPerMm3 } }))),
    )
    const [a, b, c, d] = reliefs as [number, number, number, number]
    expect(b - a).toBeGreaterThan(c - b)
    expect(c - b).toBeGreaterThan(10 * Math.abs(d - c))
    expect(d).toBeGreaterThan(c)
    expect(d).toBeLessThan((1.6 / 75) * 28.5)
  })
})
