import { z } from 'zod'
import { jobSchema } from '../../geometry/job.ts'
import { quantities } from '../../geometry/quantities.ts'
import { FIRST_LANGUAGE, languages } from './language.ts'
import { day, name, note, record, text, utc, within, words } from './record.ts'

/**
 * The nouns of the rack as every layer knows them: table, service, call, screen. Lengths in mm, angles in degrees,
 * times as UTC ISO 8601 text.
 */

/** Kinds of edge tool, in the order of a rack. */
export const toolKinds = [
  'smoothing',
  'bevelUpSmoothing',
  'jack',
  'lowAngleJack',
  'fore',
  'try',
  'jointer',
  'scrub',
  'block',
  'shooting',
  'shoulder',
  'rebate',
  'plough',
  'spokeshave',
  'chisel',
  'other',
] as const

/** How a tool stands, from ready for work to out of it. */
export const conditions = ['good', 'worn', 'damaged', 'retired'] as const

/** Most curves of one iron; nobody tells more apart. */
const MOST_CURVES = 12
/** Most letters in a field of the workshop's own. */
const MOST_OWN_LETTERS = 1000

/** What an iron is ground to for a purpose. */
const curveSchema = z.strictObject({
  purposeId: z.uuid(),
  reliefMm: within(quantities.aim.reliefMm),
  shavingDepthMm: within(quantities.aim.shavingDepthMm),
})

/** What a user says of a tool. */
export const toolDraftSchema = z.strictObject({
  name,
  kind: z.enum(toolKinds),
  /** Who made it, as far as anybody knows. */
  maker: words,
  widthMm: within(quantities.blade.widthMm),
  thicknessMm: within(quantities.blade.thicknessMm),
  /** Angle of the bed; null for a tool without one. */
  seatAngleDeg: within(quantities.blade.seatAngleDeg).nullable(),
  bevelSide: z.enum(['up', 'down']),
  /** Primary bevel at the very tip, as the wheel grinds it; a protractor across the hollow finds a little more. */
  bevelAngleDeg: within(quantities.aim.bevelAngleDeg),
  honedBevelDeg: within(quantities.blade.honedBevelDeg).nullable().default(null),
  backBevelDeg: within(quantities.blade.backBevelDeg).default(0),
  /** Null: no cap iron. */
  capSetbackMm: within(quantities.blade.capSetbackMm).nullable().default(null),
  /** Projection marked on the blade. */
  projectionMm: within(quantities.aim.projectionMm),
  /** Relief wanted at the corners in the plane of the back; 0: straight. */
  reliefMm: within(quantities.aim.reliefMm),
  shavingDepthMm: within(quantities.aim.shavingDepthMm),
  /** Which corner carries the dot, at the wheel, back up. */
  dotCorner: z.enum(['left', 'right']).default('left'),
  steel: words,
  /** Heat that softens the edge; null: not known. */
  temperLimitC: within(quantities.care.temperLimitC).nullable().default(null),
  /** From back to upper face along the blade; + where it is thinner at the edge. */
  taperDeg: within(quantities.blade.taperDeg).default(0),
  /** What may still be ground away before the blade is too short; null: not measured. */
  lengthLeftMm: within(quantities.care.lengthLeftMm).nullable().default(null),
  condition: z.enum(conditions).default('good'),
  /** Where it belongs. */
  placeId: z.uuid().nullable().default(null),
  /** Other curves that this iron is ground to, by purpose; `reliefMm` is the one in use. */
  curves: z.array(curveSchema).max(MOST_CURVES).default([]),
  /** What the workshop notes of its own, by the id of the field. */
  own: z.record(z.uuid(), z.union([text.max(MOST_OWN_LETTERS), z.number()])).default({}),
  /** Days from one grind to the next, and honings on one grind; null: not reminded of. */
  dueDays: within(quantities.care.dueDays).nullable().default(null),
  dueHonings: within(quantities.care.dueHonings).nullable().default(null),
  note,
})

/** A tool of the rack. */
export const toolSchema = toolDraftSchema.extend(record)

/** Why an iron is due: something happened to its edge, it was honed so often, or so many days went by. */
export const dueReasons = ['state', 'use', 'time'] as const

/** A tool as the list shows it: with what its log, its loans and its place say. */
export const toolLineSchema = toolSchema.extend({
  /** Names from the room to the drawer; empty: no place. */
  place: z.string(),
  /** Who has it; empty: nobody. */
  holder: z.string(),
  holderId: z.uuid().nullable(),
  dueBack: day.nullable(),
  lastGroundAt: utc.nullable(),
  /** Since it was last ground. */
  honings: z.int().min(0),
  lastSeenAt: utc.nullable(),
  /** A drop or a nick that no grind has taken away since. */
  harmed: z.enum(['yes', 'no']),
  /** Relief last measured, mean of both corners. */
  measuredReliefMm: z.number().nullable(),
  /** Why it is due; null: it is not. */
  due: z.enum(dueReasons).nullable(),
})

/** Ways to measure where the bar stands: to the wheel's surface, or from over the wheel's highest point to the bar. */
export const barMeasures = ['gap', 'heightToTop', 'heightToUnderside'] as const
/** The bar above the axle, or beside the wheel at the axle's height. */
export const barPlaces = ['above', 'inFront'] as const

/** What a user says of a grinder as it stands. */
export const stationDraftSchema = z.strictObject({
  name,
  wheelDiameterMm: within(quantities.station.wheelDiameterMm),
  wheelWidthMm: within(quantities.station.wheelWidthMm),
  wheelSpeedRpm: within(quantities.station.wheelSpeedRpm),
  maxRimSpeedMPerS: within(quantities.station.maxRimSpeedMPerS),
  barDiameterMm: within(quantities.station.barDiameterMm),
  barOffsetMm: within(quantities.station.barOffsetMm).default(0),
  /** How the bar's place is measured here. */
  barMeasure: z.enum(barMeasures).default('gap'),
  barPlace: z.enum(barPlaces).default('above'),
  /** What the bar stands on, and how it is moved. */
  barMount: words,
  wheelGrit: words,
  /** The machine's least wheel; null: not known. */
  leastDiameterMm: within(quantities.station.wheelDiameterMm).nullable().default(null),
  rotation: z.enum(['intoEdge', 'awayFromEdge']),
  cooling: z.enum(['wet', 'dry']),
  /** When the wheel was last measured. */
  measuredAt: utc,
  note,
})

/** A station of the workshop. */
export const stationSchema = stationDraftSchema.extend(record)

/** Kinds of fixture that the rack keeps and the model shows; job files know more. */
export const rackFixtureKinds = ['square', 'steered'] as const

/** What a user says of a fixture. */
export const fixtureDraftSchema = z.strictObject({
  name,
  kind: z.enum(rackFixtureKinds),
  seatOffsetMm: within(quantities.fixture.seatOffsetMm),
  /** The face of the blade that lies on it. */
  seatsOn: z.enum(['back', 'bevelSide']).default('back'),
  guideArmMm: within(quantities.fixture.guideArmMm).nullable().default(null),
  screwPitchMm: within(quantities.fixture.screwPitchMm).nullable().default(null),
  pivotSetbackMm: within(quantities.fixture.pivotSetbackMm).default(0),
  pivotOffsetMm: within(quantities.fixture.pivotOffsetMm).default(0),
  /** Whether its measured grinds correct what is reckoned for it. */
  learning: z.enum(['on', 'off']).default('on'),
  note,
})

/** A fixture of the workshop. */
export const fixtureSchema = fixtureDraftSchema.extend(record)

/** One blade at one station in one fixture: the job in hand of a tool. */
export const jobRecordSchema = z.strictObject({
  ...record,
  toolId: z.uuid(),
  stationId: z.uuid(),
  fixtureId: z.uuid(),
  document: jobSchema,
})

/** When an edge was measured: only `asGround` after reshaping tells what a fixture does. */
export const stages = ['asFound', 'asGround', 'asHoned'] as const

/** Ways to measure an edge. */
export const methods = ['leaves', 'points', 'shavings', 'trace'] as const

/** Most points kept of one reading: finer than any of the ways tells them apart. */
const MOST_POINTS = 1001

/** What a user says of a reading at the bench. */
export const benchLogDraftSchema = z.strictObject({
  toolId: z.uuid(),
  jobId: z.uuid().nullable().default(null),
  stage: z.enum(stages),
  reliefLeftMm: within(quantities.aim.reliefMm).nullable(),
  reliefRightMm: within(quantities.aim.reliefMm).nullable(),
  /** Leaf that passes halfway out. */
  reliefHalfwayMm: within(quantities.aim.reliefMm).nullable().default(null),
  /** From the leaves that passed to the next thicker ones; null: not noted. */
  leafStepMm: within(quantities.measure.stepMm).nullable().default(null),
  method: z.enum(methods).default('leaves'),
  /** Gaps at places across, left first, where they were read so; null: the corners and halfway alone. */
  points: z
    .array(z.strictObject({ uMm: within(quantities.measure.placeMm), gapMm: within(quantities.measure.leafMm) }))
    .max(MOST_POINTS)
    .nullable()
    .default(null),
  groundMinutes: within(quantities.measure.groundMinutes).nullable().default(null),
  /** How far the grind set the edge back in its middle. */
  setBackMm: within(quantities.measure.setBackMm).nullable().default(null),
  /** Gap under a square at the end of a length; + where the right corner lies back. Null: not tried. */
  squareGapMm: within(quantities.measure.squareGapMm).nullable().default(null),
  squareOverMm: within(quantities.measure.squareOverMm).nullable().default(null),
  /** Whether a fixture may learn from it. */
  counts: z.enum(['yes', 'no']).default('yes'),
  who: words,
  note,
})

/** What a line keeps of the job that it was ground by; null without one, or where the job has no such figure. */
export const groundBySchema = z.strictObject({
  stationId: z.uuid().nullable(),
  fixtureId: z.uuid().nullable(),
  task: z.enum(['reshape', 'freshen']).nullable(),
  sweeps: z.number().min(0).nullable(),
  freePlayLeftMm: z.number().nullable(),
  freePlayRightMm: z.number().nullable(),
  /** What the model said, uncalibrated, mean of both corners. */
  modelReliefMm: z.number().min(0).nullable(),
})

/** A line of the bench log; `job` and `report` are kept as they were, so that it replays. */
export const benchLogSchema = benchLogDraftSchema.extend({
  ...record,
  ...groundBySchema.shape,
  at: utc,
  engineVersion: z.string().nullable(),
})

/** Letters of all columns' names there could be, and more. */
const MOST_COLUMN_LETTERS = 1000

/** Settings of the workshop, one row each. */
export const settingsSchema = z.strictObject({
  language: z.enum(languages).default(FIRST_LANGUAGE),
  lengthUnit: z.enum(['mm', 'inch', 'thou']).default('mm'),
  theme: z.enum(['light', 'dark', 'system']).default('system'),
  /** Whether a letter or sign alone, without Ctrl or Cmd, is a shortcut. */
  singleKeys: z.enum(['on', 'off']).default('on'),
  /** Whether the screen is kept from going dark while a grind plays. */
  stayAwake: z.enum(['on', 'off']).default('on'),
  /** Columns of the list of tools, in no order, with commas between; empty: the usual ones. Names that are not known are left out. */
  columns: text.max(MOST_COLUMN_LETTERS).default(''),
  /** What all copies of a data file may weigh together. */
  copiesMostMb: within(quantities.care.copiesMostMb).default(500),
})

/** Nouns that the change log and events speak of. */
export const nouns = [
  'tool',
  'station',
  'fixture',
  'job',
  'benchLog',
  'place',
  'person',
  'loan',
  'happening',
  'dressing',
  'photo',
  'purpose',
  'ownField',
  'keptFilter',
  'toolTemplate',
  'stocktake',
  'sighting',
  'queueEntry',
  'lesson',
  'settings',
] as const

const cellSchema = z.union([z.string(), z.number(), z.null()])

/** One change, as the undo list shows it. */
export const changeSchema = z.strictObject({
  id: z.int(),
  at: utc,
  who: z.string(),
  noun: z.enum(nouns),
  entityId: z.string(),
  action: z.enum(['added', 'edited', 'removed', 'restored', 'purged']),
  /** How many records were changed with it, as one; 1: it alone. */
  together: z.int().min(1),
  /** Name or code of the record, for the message. */
  label: z.string(),
  undone: z.boolean(),
  /** The record's plain fields that it changed; empty where one was added or taken away. */
  fields: z.array(z.strictObject({ key: z.string(), before: cellSchema, after: cellSchema })),
})

export type ToolDraft = z.output<typeof toolDraftSchema>
export type Tool = z.output<typeof toolSchema>
export type ToolLine = z.output<typeof toolLineSchema>
export type StationDraft = z.output<typeof stationDraftSchema>
export type Station = z.output<typeof stationSchema>
export type FixtureDraft = z.output<typeof fixtureDraftSchema>
export type Fixture = z.output<typeof fixtureSchema>
export type JobRecord = z.output<typeof jobRecordSchema>
export type BenchLogDraft = z.output<typeof benchLogDraftSchema>
export type GroundBy = z.output<typeof groundBySchema>
export type BenchLog = z.output<typeof benchLogSchema>
export type Settings = z.output<typeof settingsSchema>
export type Change = z.output<typeof changeSchema>
export type Noun = (typeof nouns)[number]
