import { quantities } from '../../geometry/quantities.ts'
import {
  barMeasures,
  barPlaces,
  conditions,
  type Fixture,
  type FixtureDraft,
  fixtureDraftSchema,
  rackFixtureKinds,
  type Station,
  type StationDraft,
  stationDraftSchema,
  type Tool,
  type ToolDraft,
  toolDraftSchema,
  toolKinds,
} from '../../main/contract/entities.ts'
import type { Place } from '../../main/contract/people.ts'
import { placePath } from '../../main/contract/placePath.ts'
import { type FieldSpec, under } from '../ui/fieldSpec.ts'

/** Fields of a tool, in the order in which one takes it up and measures it. */
export const toolFields = (places: readonly Place[]): readonly FieldSpec<ToolDraft>[] => [
  ...under<ToolDraft>('rack:section.what', [
    { kind: 'words', key: 'name', required: true },
    { kind: 'choice', key: 'kind', options: toolKinds, texts: 'common:toolKind' },
    { kind: 'words', key: 'maker' },
    placeField(places),
    { kind: 'choice', key: 'condition', options: conditions, texts: 'common:condition' },
  ]),
  ...under<ToolDraft>('rack:section.blade', [
    { kind: 'figure', key: 'widthMm', quantity: 'blade.widthMm' },
    { kind: 'figure', key: 'thicknessMm', quantity: 'blade.thicknessMm' },
    { kind: 'figure', key: 'taperDeg', quantity: 'blade.taperDeg' },
    { kind: 'figure', key: 'lengthLeftMm', quantity: 'care.lengthLeftMm', allowEmpty: true },
    { kind: 'words', key: 'steel' },
    { kind: 'figure', key: 'temperLimitC', quantity: 'care.temperLimitC', allowEmpty: true },
    { kind: 'choice', key: 'dotCorner', options: ['left', 'right'], texts: 'common:side' },
  ]),
  ...under<ToolDraft>('rack:section.bevel', [
    { kind: 'figure', key: 'seatAngleDeg', quantity: 'blade.seatAngleDeg', allowEmpty: true },
    { kind: 'choice', key: 'bevelSide', options: ['down', 'up'], texts: 'common:bevelSide' },
    { kind: 'figure', key: 'bevelAngleDeg', quantity: 'aim.bevelAngleDeg' },
    { kind: 'figure', key: 'honedBevelDeg', quantity: 'blade.honedBevelDeg', allowEmpty: true },
    { kind: 'figure', key: 'backBevelDeg', quantity: 'blade.backBevelDeg' },
    { kind: 'figure', key: 'capSetbackMm', quantity: 'blade.capSetbackMm', allowEmpty: true },
    { kind: 'figure', key: 'projectionMm', quantity: 'aim.projectionMm' },
  ]),
  ...under<ToolDraft>('rack:section.edge', [
    { kind: 'figure', key: 'reliefMm', quantity: 'aim.reliefMm' },
    { kind: 'figure', key: 'shavingDepthMm', quantity: 'aim.shavingDepthMm' },
  ]),
  ...under<ToolDraft>('rack:section.due', [
    { kind: 'figure', key: 'dueDays', quantity: 'care.dueDays', allowEmpty: true },
    { kind: 'figure', key: 'dueHonings', quantity: 'care.dueHonings', allowEmpty: true },
  ]),
  ...under<ToolDraft>('rack:section.notes', [{ kind: 'note', key: 'note' }]),
]

/** Where a tool belongs, chosen from the workshop's places by their whole way down. */
const placeField = (places: readonly Place[]): FieldSpec<ToolDraft> => ({
  kind: 'pick',
  key: 'placeId',
  options: places.map(({ id }) => ({ value: id, name: placePath(places, id) })),
})

/** Common practice for an iron that nobody has measured yet: a bench plane's seat, bevel and honing angle. */
export const newTool: Partial<ToolDraft> = {
  kind: 'smoothing',
  seatAngleDeg: 45,
  bevelSide: 'down',
  bevelAngleDeg: 25,
  honedBevelDeg: 30,
  taperDeg: 0,
  condition: 'good',
  backBevelDeg: 0,
  projectionMm: 130,
  reliefMm: 0.1,
  shavingDepthMm: 0.05,
  dotCorner: 'left',
}

/** Fields of a station, wheel first. */
export const stationFields: readonly FieldSpec<StationDraft>[] = [
  { kind: 'words', key: 'name', required: true },
  { kind: 'figure', key: 'wheelDiameterMm', quantity: 'station.wheelDiameterMm' },
  { kind: 'figure', key: 'wheelWidthMm', quantity: 'station.wheelWidthMm' },
  { kind: 'figure', key: 'wheelSpeedRpm', quantity: 'station.wheelSpeedRpm' },
  { kind: 'figure', key: 'maxRimSpeedMPerS', quantity: 'station.maxRimSpeedMPerS' },
  { kind: 'choice', key: 'rotation', options: ['intoEdge', 'awayFromEdge'], texts: 'common:rotation' },
  { kind: 'choice', key: 'cooling', options: ['wet', 'dry'], texts: 'common:cooling' },
  { kind: 'figure', key: 'barDiameterMm', quantity: 'station.barDiameterMm' },
  { kind: 'choice', key: 'barPlace', options: barPlaces, texts: 'common:barPlace' },
  { kind: 'choice', key: 'barMeasure', options: barMeasures, texts: 'common:barMeasure' },
  { kind: 'figure', key: 'barOffsetMm', quantity: 'station.barOffsetMm' },
  { kind: 'words', key: 'barMount' },
  { kind: 'words', key: 'wheelGrit' },
  { kind: 'figure', key: 'leastDiameterMm', quantity: 'station.wheelDiameterMm', allowEmpty: true },
  { kind: 'note', key: 'note' },
]

/** What the quantity table says where the user has not measured. */
export const newStation: Partial<Record<keyof StationDraft, unknown>> = {
  wheelSpeedRpm: quantities.station.wheelSpeedRpm.defaultValue,
  maxRimSpeedMPerS: quantities.station.maxRimSpeedMPerS.defaultValue,
  barOffsetMm: quantities.station.barOffsetMm.defaultValue,
  barPlace: 'above',
  barMeasure: 'gap',
  rotation: 'intoEdge',
  cooling: 'wet',
}

/** Fields of a fixture. Arm and pitch stay empty for a square one. */
export const fixtureFields: readonly FieldSpec<FixtureDraft>[] = [
  { kind: 'words', key: 'name', required: true },
  { kind: 'choice', key: 'kind', options: rackFixtureKinds, texts: 'common:fixtureKind' },
  { kind: 'choice', key: 'seatsOn', options: ['back', 'bevelSide'], texts: 'common:seatsOn' },
  { kind: 'figure', key: 'seatOffsetMm', quantity: 'fixture.seatOffsetMm' },
  { kind: 'figure', key: 'guideArmMm', quantity: 'fixture.guideArmMm', allowEmpty: true },
  { kind: 'figure', key: 'screwPitchMm', quantity: 'fixture.screwPitchMm', allowEmpty: true },
  { kind: 'figure', key: 'pivotSetbackMm', quantity: 'fixture.pivotSetbackMm' },
  { kind: 'figure', key: 'pivotOffsetMm', quantity: 'fixture.pivotOffsetMm' },
  { kind: 'choice', key: 'learning', options: ['on', 'off'], texts: 'common:learning' },
  { kind: 'note', key: 'note' },
]

/** A fixture nobody has measured yet. */
export const newFixture: Partial<FixtureDraft> = {
  kind: 'steered',
  seatsOn: 'back',
  pivotSetbackMm: 0,
  pivotOffsetMm: 0,
  learning: 'on',
}

const draftOf = <D extends object>({ shape }: { readonly shape: { readonly [K in keyof D]: unknown } }, record: D): D =>
  Object.fromEntries(Object.entries(record).filter(([key]) => key in shape)) as D

/** What a user may edit of a record: what its draft has, without what the workshop knows of it besides. */
export const toolDraftOf = (tool: Tool): ToolDraft => draftOf<ToolDraft>(toolDraftSchema, tool)
export const stationDraftOf = (station: Station): StationDraft => draftOf<StationDraft>(stationDraftSchema, station)
export const fixtureDraftOf = (fixture: Fixture): FixtureDraft => draftOf<FixtureDraft>(fixtureDraftSchema, fixture)
