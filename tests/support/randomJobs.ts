import fc from 'fast-check'
import { fixtureKinds, type Job, type JobInput } from '../../geometry/job.ts'
import { parseJob } from '../../geometry/parseJob.ts'
import { quantities } from '../../geometry/quantities.ts'
import { setUpOf } from '../../geometry/setUp.ts'

/** Random jobs over all kinds of fixture and the whole ranges of `quantities`, on small grids and with few sweeps. */
interface Range {
  readonly min: number
  readonly max: number
}

const within = ({ min, max }: Range) => fc.double({ min, max, noNaN: true })

/** Evenly spread over the powers of ten: loads and stiffnesses run over decades. */
const decades = ({ min, max }: Range) =>
  fc.double({ min: Math.log10(min), max: Math.log10(max), noNaN: true }).map((power) => 10 ** power)

/** Mostly nothing: an error of the set-up is the exception. */
const seldom = (range: Range) =>
  fc.oneof({ weight: 4, arbitrary: fc.constant(0) }, { weight: 1, arbitrary: within(range) })

const orNull = <T>(arbitrary: fc.Arbitrary<T>) => fc.option(arbitrary, { nil: null })

const { blade, station, fixture, aim, motion, errors } = quantities

const settings = fc.record({
  stopTurnsLeft: within(motion.stopTurnsLeft),
  stopTurnsRight: within(motion.stopTurnsRight),
  yawLeftDeg: orNull(within(motion.yawLeftDeg)),
  yawRightDeg: orNull(within(motion.yawRightDeg)),
  rollLeftDeg: orNull(within(motion.rollLeftDeg)),
  rollRightDeg: orNull(within(motion.rollRightDeg)),
  traverseMm: within(motion.traverseMm),
  fingerReachMm: within(motion.fingerReachMm),
  sweeps: fc.constant(1),
})

const blades = fc.record({
  widthMm: within(blade.widthMm),
  seatAngleDeg: orNull(within(blade.seatAngleDeg)),
  bevelSide: fc.constantFrom('up' as const, 'down' as const),
  currentBevelDeg: orNull(within(blade.currentBevelDeg)),
  startEdge: orNull(fc.array(within({ min: -1, max: 1 }), { minLength: 2, maxLength: 9 })),
  taperDeg: seldom(blade.taperDeg),
})

const stations = fc.record({
  wheelWidthMm: within(station.wheelWidthMm),
  maxRimSpeedMPerS: fc.constant(station.maxRimSpeedMPerS.max),
  grindingRatio: orNull(decades(station.grindingRatio)),
})

const fixtures = fc.record({
  kind: fc.constantFrom(...fixtureKinds),
  seatsOn: fc.constantFrom('back' as const, 'bevelSide' as const),
  guideArmMm: within(fixture.guideArmMm),
  screwPitchMm: within(fixture.screwPitchMm),
  pivotSetbackMm: seldom(fixture.pivotSetbackMm),
  pivotOffsetMm: seldom(fixture.pivotOffsetMm),
  rollHeightMm: within(fixture.rollHeightMm),
  swingRadiusMm: within(fixture.swingRadiusMm),
})

/** Between two ends that come out of other figures; their order does not matter. */
const between = (a: number, b: number, share: number): number => a + (b - a) * share

/** What the triangle is made of, so that bar and blade do not pass through each other. */
const triangles = fc
  .record({
    wheelDiameterMm: within(station.wheelDiameterMm),
    bevelAngleDeg: within(aim.bevelAngleDeg),
    projectionMm: within(aim.projectionMm),
    barDiameterMm: within(station.barDiameterMm),
    barOverBevel: fc.boolean(),
    thicknessShare: within({ min: 0, max: 1 }),
    seatShare: within({ min: 0, max: 1 }),
  })
  .map(({ barOverBevel, thicknessShare, seatShare, ...figures }) => {
    const reachMm = (figures.wheelDiameterMm / 2) * Math.cos((figures.bevelAngleDeg * Math.PI) / 180)
    const thicknessMm = between(blade.thicknessMm.min, Math.min(blade.thicknessMm.max, reachMm), thicknessShare)
    const barRadiusMm = figures.barDiameterMm / 2
    const seatOffsetMm = barOverBevel
      ? between(thicknessMm + barRadiusMm, fixture.seatOffsetMm.max, seatShare)
      : between(-barRadiusMm, fixture.seatOffsetMm.min, seatShare)
    return { ...figures, thicknessMm, seatOffsetMm }
  })

const motions = fc
  .record({
    path: fc.constantFrom('sinusoid' as const, 'triangle' as const, 'threePosition' as const, 'recorded' as const),
    endShare: within(motion.endShare),
    recordedPath: fc.array(within({ min: -1, max: 1 }), { minLength: 4, maxLength: 12 }),
    recordedSweeps: fc.integer({ min: 1, max: 3 }),
    startSide: fc.constantFrom('right' as const, 'left' as const),
    loadN: decades(motion.loadN),
    stepsPerSweep: fc.integer({ min: 4, max: 8 }),
    removalPerSweepMm3: decades(motion.removalPerSweepMm3),
    bedStiffnessNPerMm3: decades(motion.bedStiffnessNPerMm3),
    schedule: fc.array(settings, { maxLength: 2 }),
  })
  .chain((fields) => settings.map((setting) => ({ ...setting, ...fields })))

const setUpErrors = fc.record({
  barAskewDeg: seldom(errors.barAskewDeg),
  barRollDeg: seldom(errors.barRollDeg),
  wheelConeMm: seldom(errors.wheelConeMm),
  wheelCrownMm: seldom(errors.wheelCrownMm),
  mountingAskewDeg: seldom(errors.mountingAskewDeg),
  pivotTiltDeg: seldom(errors.pivotTiltDeg),
  parasiticRollDeg: seldom(errors.parasiticRollDeg),
  stopLashMm: seldom(errors.stopLashMm),
})

const inputs: fc.Arbitrary<JobInput> = fc
  .record({
    triangle: triangles,
    blade: blades,
    station: stations,
    fixture: fixtures,
    motion: motions,
    errors: setUpErrors,
    grid: fc.record({ across: fc.integer({ min: 5, max: 17 }), through: fc.integer({ min: 3, max: 6 }) }),
  })
  .map(({ triangle, blade, station, fixture, motion, errors, grid }) => ({
    version: 1 as const,
    blade: { ...blade, thicknessMm: triangle.thicknessMm },
    station: { ...station, wheelDiameterMm: triangle.wheelDiameterMm, barDiameterMm: triangle.barDiameterMm },
    fixture: { ...fixture, seatOffsetMm: triangle.seatOffsetMm },
    aim: { bevelAngleDeg: triangle.bevelAngleDeg, projectionMm: triangle.projectionMm, reliefMm: 0 },
    motion,
    errors,
    grid,
  }))

const settable = (input: JobInput): Job | null => {
  const job = parseJob(input)
  return job.ok && setUpOf(job.value).ok ? job.value : null
}

/** Jobs whose triangle closes. */
export const randomJobs: fc.Arbitrary<Job> = inputs.map(settable).filter((job) => job !== null)
