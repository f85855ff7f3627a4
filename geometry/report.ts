import { z } from 'zod'
import { jobSchema } from './job.ts'

/**
 * What the engine finds of a job. This schema is the only description of it: types and JSON Schema both come from here.
 * Lengths in mm, angles in degrees, as the names say.
 */

/** Sides as the operator sees them at the wheel, blade back up. */
export type Side = 'left' | 'right'

const figure = z.number()
const figures = z.array(z.number()).readonly()

/** Where bar, projection and bevel stand. */
const setUpSchema = z.strictObject({
  barDistanceMm: figure.describe('Wheel axis to bar axis.'),
  projectionMm: figure.describe('Bar axis to edge, along the back.'),
  bevelAngleDeg: figure.describe('Angle at the very tip.'),
  gapMm: figure.describe('Between the surfaces of bar and wheel.'),
  barHeightMm: figure.describe('Bar axis above the highest point of the wheel, bar above the axle.'),
  bevelPerProjectionDegPerMm: figure.describe('Bar held fixed.'),
  bevelPerBarDistanceDegPerMm: figure.describe('Projection held fixed.'),
  bevelPerWheelDiameterDegPerMm: figure.describe('Bar left where it is while the wheel wears.'),
  rimSpeedMPerS: figure,
})
export type SetUpReport = Readonly<z.output<typeof setUpSchema>>

/** The concave bevel the wheel leaves. */
const hollowSchema = z.strictObject({
  chordMm: figure.describe('Edge to heel, straight.'),
  chordAngleDeg: figure.describe('What a flat stone finds; the tip is sharper.'),
  depthMm: figure,
})
export type HollowReport = Readonly<z.output<typeof hollowSchema>>

/** The aim, taken as an arc of a circle across the width. */
const planSchema = z.strictObject({
  reliefMm: figure,
  woodReliefMm: figure.nullable().describe('Null where the tool has no seat.'),
  edgeRadiusMm: figure.nullable().describe('Null for a straight edge.'),
  shavingWidthMm: figure.nullable().describe('Null where the tool has no seat.'),
})
export type PlanReport = Readonly<z.output<typeof planSchema>>

const reachableSchema = z
  .boolean()
  .describe('False: the figures are the nearest the fixture can do; the code says why.')
const reachCodeSchema = z.enum([
  'reachable',
  'squareFixture',
  'beyondStopTravel',
  'fingersTooShort',
  'wheelTooNarrow',
  'noBalance',
])

/** Stop settings that form the wanted relief at both corners. */
const turnsSchema = z.strictObject({
  left: figure,
  right: figure,
  reachable: reachableSchema,
  code: reachCodeSchema,
})
export type TurnsReport = Readonly<z.output<typeof turnsSchema>>

/** Turn of the fixture, yaw or roll, that forms the wanted relief at both corners. */
const forAimSchema = z.strictObject({
  leftDeg: figure,
  rightDeg: figure,
  sweeps: figure.describe('Of this job, until the edge is formed.'),
  reachable: reachableSchema,
  code: reachCodeSchema,
})
export type ForAimReport = Readonly<z.output<typeof forAimSchema>>

const freeOr = figure.nullable().describe('Null: nothing stops it.')

/** How far fixture and stops let the edge go, at the first setting. */
const freedomSchema = z.strictObject({
  yawLeftDeg: freeOr,
  yawRightDeg: freeOr,
  rollLeftDeg: figure,
  rollRightDeg: figure,
  sweepLeftMm: figure.nullable().describe('Travel of the middle of the edge; null: nothing stops it.'),
  sweepRightMm: figure.nullable().describe('Belongs to yawRightDeg.'),
  forAim: forAimSchema.nullable().describe('By the contact model, uncalibrated; null where no stops can be asked for.'),
  turnsForAim: turnsSchema
    .nullable()
    .describe('In turns of the stop screws; null but for a steered fixture whose arm and pitch are known.'),
  turnsCalibrated: turnsSchema.nullable().describe('The same, by what was learnt of the fixture.'),
})
export type FreedomReport = Readonly<z.output<typeof freedomSchema>>

/** An edge line and what is read from it. */
const edgeSchema = z.strictObject({
  edgeUMm: figures.describe('Across the width, left corner first.'),
  edgeVMm: figures.describe('From the edge as it was; + is steel gone.'),
  reliefLeftMm: figure.describe('How far the corner lies behind the foremost point of the edge.'),
  reliefRightMm: figure,
  skewDeg: figure,
})
export type EdgeReport = Readonly<z.output<typeof edgeSchema>>

/** The edge that the grind left. */
const grindSchema = edgeSchema.extend({
  volumeRemovedMm3: figure,
  steps: figure,
  bevelAngleDeg: figure.describe('Bevel in the middle of the edge, as the receding edge makes it.'),
})
export type GrindReport = Readonly<z.output<typeof grindSchema>>

const columnsCut = z.array(z.number().nullable()).readonly()

/** Where the wheel has cut on the bevel, column by column; lengths along the bevel. */
const bandSchema = z.strictObject({
  fromEdgeMm: columnsCut.describe('Null where the wheel has not cut.'),
  fromHeelMm: columnsCut.describe('Null where the wheel has not cut.'),
  stopSweep: figure
    .nullable()
    .describe(
      'Sweep after which to stop: freshening, the band as near to the edge as wanted; reshaping, burr all along. Null: not reached.',
    ),
})
export type BandReport = Readonly<z.output<typeof bandSchema>>

/** The edge as the wood meets it. */
const woodViewSchema = z.strictObject({
  pitchDeg: figure,
  clearanceDeg: figure,
  woodReliefMm: figure.describe('Mean of left and right.'),
  shavingWidthMm: figure,
  shavingThicknessMaxMm: figure,
  shavingAreaMm2: figure,
})
export type WoodViewReport = Readonly<z.output<typeof woodViewSchema>>

const unknownOr = figure.nullable().describe('Null where no neighbouring job can be worked out.')

/** What one input's standard deviation leaves unknown. */
const uncertaintyPartSchema = z.strictObject({
  input: jobSchema.shape.tolerances.unwrap().keyof(),
  bevelAngleDeg: unknownOr,
  reliefMm: unknownOr.describe('Of the mean of both corners; null where no neighbouring job can be worked out.'),
  skewDeg: unknownOr,
})
export type UncertaintyPart = Readonly<z.output<typeof uncertaintyPartSchema>>

/** Standard deviations that the job's tolerances leave, inputs independent and small. */
const uncertaintySchema = z.strictObject({
  bevelAngleDeg: unknownOr,
  reliefLeftMm: unknownOr,
  reliefRightMm: unknownOr,
  skewDeg: unknownOr,
  parts: z
    .array(uncertaintyPartSchema)
    .readonly()
    .describe('One for each input that is not exact and has a say, in the order of the tolerances of the job.'),
})
export type UncertaintyReport = Readonly<z.output<typeof uncertaintySchema>>

/** What a user should know though the job can be done; its sentence stands under the code in the catalogue. */
export const cautionSchema = z.strictObject({
  code: z.string(),
  params: z.record(z.string(), z.union([z.string(), z.number()])),
})
export type Caution = Readonly<z.output<typeof cautionSchema>>

/** The grind's relief, mean of both corners, as the fixture's history corrects it. */
const learntSchema = z.strictObject({
  reliefMm: figure,
  standardErrorMm: figure.describe('Of the relief of the next grind.'),
})
export type LearntReport = Readonly<z.output<typeof learntSchema>>

/** Everything solveJob finds. */
export const reportSchema = z.strictObject({
  setUp: setUpSchema,
  hollow: hollowSchema,
  plan: planSchema,
  freedom: freedomSchema,
  envelope: edgeSchema
    .nullable()
    .describe(
      'Cuts at constant depth: the exact answer for rigid cuts, not a limit of the grind. Null where nothing stops the fixture.',
    ),
  grind: grindSchema,
  band: bandSchema,
  learnt: learntSchema
    .nullable()
    .describe('Null where the fixture has no calibration, or the calibration does not apply.'),
  woodView: woodViewSchema.nullable().describe('Null where the tool has no seat.'),
  uncertainty: uncertaintySchema,
  cautions: z.array(cautionSchema).readonly(),
  engineVersion: z.string(),
  job: jobSchema.describe('The whole job, defaults filled in.'),
})
export type Report = Readonly<z.output<typeof reportSchema>>
