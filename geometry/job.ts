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

const { blade, station, fixture, aim, motion, grid } = quantities

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
})

const stationSchema = z.strictObject({
  wheelDiameterMm: needed(station.wheelDiameterMm),
  wheelWidthMm: needed(station.wheelWidthMm),
  wheelSpeedRpm: orDefault(station.wheelSpeedRpm),
  maxRimSpeedMPerS: orDefault(station.maxRimSpeedMPerS),
  barDiameterMm: needed(station.barDiameterMm),
  barOffsetMm: orDefault(station.barOffsetMm),
})

/** Kinds of fixture that this engine moves. */
export const fixtureKinds = ['square', 'steered'] as const

const fixtureSchema = z.strictObject({
  kind: z.enum(fixtureKinds),
  seatOffsetMm: needed(fixture.seatOffsetMm),
  /** Needed by a steered fixture whose stops are given in turns. */
  guideArmMm: orNull(fixture.guideArmMm),
  screwPitchMm: orNull(fixture.screwPitchMm),
  pivotSetbackMm: orDefault(fixture.pivotSetbackMm),
  pivotOffsetMm: orDefault(fixture.pivotOffsetMm),
  /** Belongs to fixtures that swing about a pin, which this engine does not move; null. */
  swingRadiusMm: z.null().default(null),
  /** Learnt corrections; none in this version; null. */
  calibration: z.null().default(null),
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

const motionSchema = z.strictObject({
  stopTurnsLeft: orDefault(motion.stopTurnsLeft),
  stopTurnsRight: orDefault(motion.stopTurnsRight),
  /** A yaw given here stands instead of the turns of its side. */
  yawLeftDeg: orNull(motion.yawLeftDeg),
  yawRightDeg: orNull(motion.yawRightDeg),
  /** Belong to fixtures that rock, which this engine does not move; null. */
  rollLeftDeg: z.null().default(null),
  rollRightDeg: z.null().default(null),
  path: z.enum(['sinusoid', 'triangle', 'threePosition']).default('sinusoid'),
  /** Share of the time at each end, for the path threePosition. */
  endShare: orDefault(motion.endShare),
  startSide: z.enum(['right', 'left']).default('right'),
  traverseMm: orDefault(motion.traverseMm),
  fingerReachMm: orDefault(motion.fingerReachMm),
  loadN: orDefault(motion.loadN),
  sweeps: whole(motion.sweeps),
  stepsPerSweep: whole(motion.stepsPerSweep),
  removalPerSweepMm3: orDefault(motion.removalPerSweepMm3),
  bedStiffnessNPerMm3: orDefault(motion.bedStiffnessNPerMm3),
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
  grid: gridSchema.prefault({}),
})

/** A job with every default filled in. */
export type Job = z.output<typeof jobSchema>
/** A job as a person or another program may write it. */
export type JobInput = z.input<typeof jobSchema>

/** The job file as JSON Schema, for editors and other programs. */
export const jobJsonSchema = (): unknown => z.toJSONSchema(jobSchema, { io: 'input' })
