import { z } from 'zod'
import { type Quantity, quantities } from './quantities.ts'

/**
 * The job file: one blade at one station in one fixture, what is wanted of it and how it is moved.
 * Lengths in mm, angles in degrees, as the names say. This schema is the only description of it: the door, the
 * window's fields and the JSON Schema all come from here.
 */
export const JOB_VERSION = 1

const within = (q: Quantity) => z.number().min(q.min).max(q.max)
const needed = within
const orNull = (q: Quantity) => within(q).nullable().default(null)
const orDefault = (q: Quantity) => within(q).default(q.defaultValue as number)
const whole = (q: Quantity) =>
  z
    .int()
    .min(q.min)
    .max(q.max)
    .default(q.defaultValue as number)

const { blade, station, fixture, calibration, aim, motion, errors, tolerances, grid } = quantities

/** Most points of a starting edge: finer than any way of measuring it. */
const MOST_START_EDGE_POINTS = 1001
/** A starting edge stays within this of the nominal edge (mm). */
const START_EDGE_RANGE_MM = 10

const bladeSchema = z.strictObject({
  widthMm: needed(blade.widthMm),
  thicknessMm: needed(blade.thicknessMm),
  /** Angle of the bed; null for a tool without one, such as a chisel. */
  seatAngleDeg: within(blade.seatAngleDeg).nullable(),
  bevelSide: z.enum(['up', 'down']),
  /** Flat bevel there at the start; null: the bevel aimed at. */
  currentBevelDeg: orNull(blade.currentBevelDeg),
  /** v of the edge at equal steps across, left corner first; null: straight. */
  startEdge: z
    .array(z.number().min(-START_EDGE_RANGE_MM).max(START_EDGE_RANGE_MM))
    .min(2)
    .max(MOST_START_EDGE_POINTS)
    .nullable()
    .default(null),
  /** Angle between back and upper face, + where the iron is thickest at the edge. */
  taperDeg: orDefault(blade.taperDeg),
})

const stationSchema = z.strictObject({
  wheelDiameterMm: needed(station.wheelDiameterMm),
  wheelWidthMm: needed(station.wheelWidthMm),
  wheelSpeedRpm: orDefault(station.wheelSpeedRpm),
  maxRimSpeedMPerS: orDefault(station.maxRimSpeedMPerS),
  barDiameterMm: needed(station.barDiameterMm),
  barOffsetMm: orDefault(station.barOffsetMm),
  /** Steel ground per wheel worn away, by volume; null: the wheel keeps its shape. */
  grindingRatio: orNull(station.grindingRatio),
})

/** Kinds of fixture, as `Freedom` tells them apart. */
export const fixtureKinds = ['square', 'steered', 'rocking', 'swing', 'freehand'] as const

/** What a fixture's history says of it: see `calibrate`. */
export const calibrationSchema = z.strictObject({
  scale: needed(calibration.scale),
  lashMm: needed(calibration.lashMm),
  scaleSe: needed(calibration.scaleSe),
  lashSe: needed(calibration.lashSe),
  /** 0 in files older than it, whose errors are then at most too great. */
  scaleLashCorrelation: orDefault(calibration.scaleLashCorrelation),
  grinds: z.int().min(calibration.grinds.min).max(calibration.grinds.max),
  repeatabilityMm: orDefault(calibration.repeatabilityMm),
})

const fixtureSchema = z.strictObject({
  kind: z.enum(fixtureKinds),
  /** From the face that the blade lies on to the bar's axis: from the back, + on the bevel side; or from the bevel side's face, + away from the blade. */
  seatOffsetMm: needed(fixture.seatOffsetMm),
  /** The face of the blade that lies on the fixture. On the bevel side, thickness enters the triangle. */
  seatsOn: z.enum(['back', 'bevelSide']).default('back'),
  /** Needed by a steered fixture whose stops are given in turns. */
  guideArmMm: orNull(fixture.guideArmMm),
  screwPitchMm: orNull(fixture.screwPitchMm),
  pivotSetbackMm: orDefault(fixture.pivotSetbackMm),
  pivotOffsetMm: orDefault(fixture.pivotOffsetMm),
  /** Height of a rocking fixture's axis from the plane of the back, + towards the bevel. */
  rollHeightMm: orDefault(fixture.rollHeightMm),
  /** Needed by a swing fixture: from its pin to the edge. */
  swingRadiusMm: orNull(fixture.swingRadiusMm),
  /** Learnt from measured grinds; null: none, or not to be used. */
  calibration: calibrationSchema.nullable().default(null),
})

const aimSchema = z.strictObject({
  task: z.enum(['reshape', 'freshen']).default('reshape'),
  bandMm: orDefault(aim.bandMm),
  bevelAngleDeg: orNull(aim.bevelAngleDeg),
  projectionMm: orNull(aim.projectionMm),
  barDistanceMm: orNull(aim.barDistanceMm),
  reliefMm: orNull(aim.reliefMm),
  woodReliefMm: orNull(aim.woodReliefMm),
  edgeRadiusMm: orNull(aim.edgeRadiusMm),
  shavingDepthMm: orDefault(aim.shavingDepthMm),
})

/** What may change from one setting of the stops to the next. */
const settingFields = {
  stopTurnsLeft: orDefault(motion.stopTurnsLeft),
  stopTurnsRight: orDefault(motion.stopTurnsRight),
  /** A yaw given here stands instead of the turns of its side; for a swing fixture it is the amplitude. */
  yawLeftDeg: orNull(motion.yawLeftDeg),
  yawRightDeg: orNull(motion.yawRightDeg),
  /** Stops of a rocking fixture; null: none, it stays level. */
  rollLeftDeg: orNull(motion.rollLeftDeg),
  rollRightDeg: orNull(motion.rollRightDeg),
  traverseMm: orDefault(motion.traverseMm),
  fingerReachMm: orDefault(motion.fingerReachMm),
  sweeps: whole(motion.sweeps),
}

/** Most settings after the first: more than three in all nobody keeps apart at the wheel. */
const MOST_FURTHER_SETTINGS = 2
/** A recorded path: enough to be a movement, no more than a hand can make. */
export const FEWEST_SAMPLES = 4
export const MOST_SAMPLES = 20_000

const motionSchema = z.strictObject({
  ...settingFields,
  path: z.enum(['sinusoid', 'triangle', 'threePosition', 'recorded']).default('sinusoid'),
  /** Share of the time at each end, for the path threePosition. */
  endShare: orDefault(motion.endShare),
  /** For the path recorded: the load's place at equal steps of time, -1 left to +1 right of the reach; it is walked again and again. */
  recordedPath: z.array(z.number().min(-1).max(1)).min(FEWEST_SAMPLES).max(MOST_SAMPLES).nullable().default(null),
  /** Sweeps that one walk of the recorded path takes. */
  recordedSweeps: whole(motion.recordedSweeps),
  startSide: z.enum(['right', 'left']).default('right'),
  loadN: orDefault(motion.loadN),
  stepsPerSweep: whole(motion.stepsPerSweep),
  removalPerSweepMm3: orDefault(motion.removalPerSweepMm3),
  bedStiffnessNPerMm3: orDefault(motion.bedStiffnessNPerMm3),
  /** Settings that follow the first, each with its own sweeps. */
  schedule: z.array(z.strictObject(settingFields)).max(MOST_FURTHER_SETTINGS).default([]),
})

/** What the set-up is off by; all 0: a true one. */
const errorsSchema = z.strictObject({
  /** Bar against the wheel's axis, in the plane of the back: + as a yaw to the right. */
  barAskewDeg: orDefault(errors.barAskewDeg),
  /** Bar against the wheel's axis, square to that: + as a roll to the right. */
  barRollDeg: orDefault(errors.barRollDeg),
  /** Wheel's left rim above its middle, as much as the right one below it. */
  wheelConeMm: orDefault(errors.wheelConeMm),
  /** Wheel's middle above its rims. */
  wheelCrownMm: orDefault(errors.wheelCrownMm),
  /** Blade in its clamp, + as a yaw to the right. */
  mountingAskewDeg: orDefault(errors.mountingAskewDeg),
  /** Pivot from square to the back, + leaning towards the edge on the bevel side. */
  pivotTiltDeg: orDefault(errors.pivotTiltDeg),
  /** Roll of the fixture with the load at the right end, as much the other way at the left; + as a roll to the right. */
  parasiticRollDeg: orDefault(errors.parasiticRollDeg),
  /** Free play beyond what the stops are set to, each side. */
  stopLashMm: orDefault(errors.stopLashMm),
})

/** How well what was measured or set is known: one standard deviation each; 0: exactly. */
const tolerancesSchema = z.strictObject({
  wheelDiameterMm: orDefault(tolerances.wheelDiameterMm),
  projectionMm: orDefault(tolerances.projectionMm),
  /** Gap between bar and wheel, or the bar's height over the wheel: whichever is measured. */
  barMm: orDefault(tolerances.barMm),
  seatOffsetMm: orDefault(tolerances.seatOffsetMm),
  guideArmMm: orDefault(tolerances.guideArmMm),
  /** Of stops given in turns, each side on its own. */
  stopTurns: orDefault(tolerances.stopTurns),
  /** Of stops given as a yaw or a roll, each side on its own. */
  stopAngleDeg: orDefault(tolerances.stopAngleDeg),
  mountingAskewDeg: orDefault(tolerances.mountingAskewDeg),
  barAskewDeg: orDefault(tolerances.barAskewDeg),
  fingerReachMm: orDefault(tolerances.fingerReachMm),
  /** Of the steel taken in a sweep, as a share of it. */
  removalShare: orDefault(tolerances.removalShare),
})

const gridSchema = z.strictObject({ across: whole(grid.across), through: whole(grid.through) })

/** The job file, field by field; rules between fields stand in parseJob. */
export const jobSchema = z.strictObject({
  version: z.literal(JOB_VERSION),
  blade: bladeSchema,
  station: stationSchema,
  fixture: fixtureSchema,
  aim: aimSchema,
  motion: motionSchema.prefault({}),
  errors: errorsSchema.prefault({}),
  tolerances: tolerancesSchema.prefault({}),
  grid: gridSchema.prefault({}),
})

/** A job with every default filled in. */
export type Job = z.output<typeof jobSchema>
/** A job as a person or another program may write it. */
export type JobInput = z.input<typeof jobSchema>

/** One setting of stops, reach and traverse with its sweeps. */
export type Setting = Job['motion']['schedule'][number]

/** The job file as JSON Schema, for editors and other programs. */
export const jobJsonSchema = (): unknown => z.toJSONSchema(jobSchema, { io: 'input' })
