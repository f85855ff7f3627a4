import type { TFunction } from 'i18next'
import { quantities } from '../../geometry/quantities.ts'
import type { LabelNoun } from '../contract/codes.ts'
import type { Fixture, Settings, Station, Tool } from '../contract/entities.ts'
import { figure, joined } from '../contract/figures.ts'
import type { Place } from '../contract/people.ts'
import type { CodedStore } from '../database/recordStore.ts'
import type { Database } from '../database/schema.ts'
import { fixtureStore, placeStore, stationStore } from '../rack/stores.ts'
import { toolStore } from '../rack/tool.ts'

/** What stands on a label. Labels stay for years, so it is only what does not change with grinding or use. */
export interface LabelFacts {
  readonly code: string
  readonly name: string
  /** May be empty. */
  readonly line: string
  /** Which corner of the iron carries the dot, back up; null for what is no iron. */
  readonly dot: 'left' | 'right' | null
}

interface Writing {
  readonly db: Database
  readonly t: TFunction
  readonly lengthUnit: Settings['lengthUnit']
}

/** How a noun's records come to their labels. */
interface Labelled<T extends { readonly id: string; readonly code: string; readonly version: number }> {
  readonly store: CodedStore<T>
  readonly factsOf: (record: T, writing: Writing) => LabelFacts | Promise<LabelFacts>
}

const sizeOf = ({ widthMm, thicknessMm }: Tool, { lengthUnit }: Writing): string => {
  const width = figure(widthMm, 'mm', quantities.blade.widthMm.decimals, lengthUnit)
  const thickness = figure(thicknessMm, 'mm', quantities.blade.thicknessMm.decimals, lengthUnit)
  return `${width.text} × ${joined(thickness)}`
}

const pathOf = async (db: Database, placeId: string): Promise<string> => {
  const row = await db.selectFrom('placeChain').select('path').where('id', '=', placeId).executeTakeFirst()
  return row?.path ?? ''
}

const tool: Labelled<Tool> = {
  store: toolStore,
  factsOf: (record, writing) => ({
    code: record.code,
    name: record.name,
    line: sizeOf(record, writing),
    dot: record.dotCorner,
  }),
}

const station: Labelled<Station> = {
  store: stationStore,
  factsOf: ({ code, name }, { t }) => ({ code, name, line: t('labels:line.station'), dot: null }),
}

const fixture: Labelled<Fixture> = {
  store: fixtureStore,
  factsOf: ({ code, name, kind }, { t }) => ({
    code,
    name,
    line: t('labels:line.fixture', { kind: t(`common:fixtureKind.${kind}`) }),
    dot: null,
  }),
}

const place: Labelled<Place> = {
  store: placeStore,
  factsOf: async ({ code, name, parentId }, { db, t }) => {
    const path = parentId === null ? '' : await pathOf(db, parentId)
    return { code, name, line: path || t('labels:line.place'), dot: null }
  },
}

/** Every noun that carries labels. */
export const labelled = { tool, station, fixture, place } as const satisfies Record<LabelNoun, unknown>
