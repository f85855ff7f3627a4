import { z } from 'zod'

/** How a measured grind stands in what a fixture has learnt. */
export const standings = ['used', 'excluded', 'unequal', 'outlier', 'noFreePlay'] as const

const calibrationSchema = z.strictObject({
  /** Times the model's relief. */
  scale: z.number(),
  lashMm: z.number(),
  scaleSe: z.number(),
  lashSe: z.number(),
  /** Of the errors of scale and lash. */
  scaleLashCorrelation: z.number(),
  grinds: z.int(),
  repeatabilityMm: z.number(),
})

/** One measured reshaping with a fixture. */
export const learntGrindSchema = z.strictObject({
  lineId: z.uuid(),
  version: z.int(),
  toolCode: z.string(),
  toolName: z.string(),
  at: z.iso.datetime(),
  freePlayMm: z.number(),
  modelReliefMm: z.number(),
  measuredReliefMm: z.number(),
  /** Measured less what the calibration says. */
  residualMm: z.number(),
  standing: z.enum(standings),
})

/** What a fixture has learnt, and from what; oldest first. */
export const learntSchema = z.strictObject({
  grinds: z.array(learntGrindSchema),
  calibration: calibrationSchema,
  /** As it stood before the newest grind that counts; null: there is none. */
  before: calibrationSchema.nullable(),
  code: z.enum(['tooFewGrinds', 'contradict', 'learnt']),
})

/** What the grinds at a station took; null: nothing was noted. */
export const stationRemovalSchema = z
  .strictObject({
    perSweepMm3: z.number(),
    spreadMm3: z.number(),
    perMinuteMm3: z.number().nullable(),
    sweepSeconds: z.number().nullable(),
    grinds: z.int(),
  })
  .nullable()

export type Learnt = z.output<typeof learntSchema>
export type LearntGrind = z.output<typeof learntGrindSchema>
export type Standing = (typeof standings)[number]
