import fc from 'fast-check'
import type { Job, JobInput } from '../../geometry/job.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { setUpOf } from '../../geometry/setUp.ts'

const figure = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const inputs: fc.Arbitrary<JobInput> = fc
  .record({
    widthMm: figure(6, 70),
    thicknessMm: figure(1.5, 5),
    seatAngleDeg: figure(12, 60),
    bevelSide: fc.constantFrom('up' as const, 'down' as const),
    wheelDiameterMm: figure(150, 260),
    wheelWidthMm: figure(20, 60),
    kind: fc.constantFrom('square' as const, 'steered' as const),
    guideArmMm: figure(50, 100),
    pivotOffsetMm: figure(-3, 3),
    bevelAngleDeg: figure(20, 45),
    projectionMm: figure(90, 160),
    reliefMm: fc.constantFrom(0, 0, 0, 0, 0, 0, 0, 0, 0, 0.2),
    turns: figure(0, 2.5),
    path: fc.constantFrom('sinusoid' as const, 'triangle' as const, 'threePosition' as const),
    loadN: figure(1, 60),
    bedStiffnessNPerMm3: figure(2, 200),
  })
  .map((f) => ({
    version: 1 as const,
    blade: { widthMm: f.widthMm, thicknessMm: f.thicknessMm, seatAngleDeg: f.seatAngleDeg, bevelSide: f.bevelSide },
    station: { wheelDiameterMm: f.wheelDiameterMm, wheelWidthMm: f.wheelWidthMm, barDiameterMm: 12 },
    fixture: {
      kind: f.kind,
      seatOffsetMm: 15,
      guideArmMm: f.guideArmMm,
      screwPitchMm: 0.8,
      pivotOffsetMm: f.pivotOffsetMm,
    },
    aim: { bevelAngleDeg: f.bevelAngleDeg, projectionMm: f.projectionMm, reliefMm: f.reliefMm },
    motion: {
      stopTurnsLeft: f.turns,
      stopTurnsRight: f.turns / 2,
      path: f.path,
      traverseMm: 8,
      fingerReachMm: 0.4 * f.widthMm,
      loadN: f.loadN,
      sweeps: 3,
      bedStiffnessNPerMm3: f.bedStiffnessNPerMm3,
    },
    grid: { across: 21, through: 5 },
  }))

const settable = (input: JobInput): Job[] => {
  const job = parseJob(input)
  return job.ok && setUpOf(job.value).ok ? [job.value] : []
}

/** Jobs that can be set up, the same for the same seed on every machine. @returns `count` of them */
export const seededJobs = (seed: number, count: number): readonly Job[] =>
  fc
    .sample(inputs, { seed, numRuns: 2 * count })
    .flatMap(settable)
    .slice(0, count)
