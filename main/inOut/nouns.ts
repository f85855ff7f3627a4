import { z } from 'zod'
import { benchLogStore } from '../benchLog/benchLog.ts'
import {
  benchLogDraftSchema,
  fixtureDraftSchema,
  groundBySchema,
  jobRecordSchema,
  stationDraftSchema,
  toolDraftSchema,
} from '../contract/entities.ts'
import {
  keptFilterDraftSchema,
  ownFieldDraftSchema,
  photoDraftSchema,
  purposeDraftSchema,
  toolTemplateDraftSchema,
} from '../contract/extras.ts'
import { type InOutNoun, inOutNouns } from '../contract/inOut.ts'
import { loanDraftSchema, personDraftSchema, placeDraftSchema } from '../contract/people.ts'
import { utc } from '../contract/record.ts'
import {
  dressingDraftSchema,
  happeningDraftSchema,
  queueEntryDraftSchema,
  sightingDraftSchema,
  stocktakeDraftSchema,
} from '../contract/work.ts'
import type { Coded, CodedStore } from '../database/recordStore.ts'
import { jobStore } from '../job/job.ts'
import * as stores from '../rack/stores.ts'
import { fixtureStore, stationStore } from '../rack/stores.ts'
import { toolStore } from '../rack/tool.ts'
import { type Column, columnsOf } from './columns.ts'

/** A record of any noun, once its schema has been read. */
export type AnyRecord = Coded & Readonly<Record<string, unknown>>
/** What is said of a record, without id, code and version. */
export type Draft = Readonly<Record<string, unknown>>

/** Another record that this one speaks of. */
export interface Reference {
  readonly key: string
  readonly noun: InOutNoun
  readonly id: string
}

/** All that going in and out needs to know of a noun. */
export interface NounForm {
  readonly noun: InOutNoun
  readonly store: CodedStore<AnyRecord>
  readonly draft: z.ZodObject
  readonly columns: readonly Column[]
  /** References that lie deeper than in an entry of their own. */
  references(draft: Draft): readonly Reference[]
  /** What remains of such deeper entries without these references. */
  trimmed(draft: Draft, lost: readonly Reference[]): Draft
  /** Entries that no two standing records may share; null: none. */
  readonly alone: Alone | null
}

/** Only records whose entry `while` holds nothing count, where there is one. */
export interface Alone {
  /** The problem where two would. */
  readonly code: string
  readonly keys: readonly string[]
  readonly while?: string
}

const anything = z.record(z.string(), z.unknown())

/** Kept as it was when it was ground, whatever form jobs have today. */
const keptBenchLogSchema = benchLogDraftSchema.extend({
  ...groundBySchema.shape,
  at: utc,
  engineVersion: z.string().nullable().default(null),
  job: anything.nullable().default(null),
  report: anything.nullable().default(null),
})

const keptJobSchema = jobRecordSchema
  .omit({ id: true, code: true, version: true })
  .extend({ toolAim: z.record(z.string(), z.number()), usedAt: utc })

const form = (
  store: unknown,
  draft: z.ZodObject,
  more: Partial<Pick<NounForm, 'references' | 'trimmed' | 'alone'>> = {},
): Omit<NounForm, 'noun'> => ({
  store: store as CodedStore<AnyRecord>,
  draft,
  columns: columnsOf(draft),
  references: () => [],
  trimmed: () => ({}),
  alone: null,
  ...more,
})

interface ToolParts {
  readonly curves: readonly { readonly purposeId: string }[]
  readonly own: Readonly<Record<string, unknown>>
}

const partsOf = (draft: Draft): ToolParts => draft as unknown as ToolParts

const toolReferences = ({ curves, own }: ToolParts): readonly Reference[] => [
  ...curves.map(({ purposeId }): Reference => ({ key: 'curves', noun: 'purpose', id: purposeId })),
  ...Object.keys(own).map((id): Reference => ({ key: 'own', noun: 'ownField', id })),
]

const trimmedTool = ({ curves, own }: ToolParts, lost: readonly Reference[]): Draft => {
  const ids = lost.map(({ id }) => id)
  return {
    curves: curves.filter(({ purposeId }) => !ids.includes(purposeId)),
    own: Object.fromEntries(Object.entries(own).filter(([id]) => !ids.includes(id))),
  }
}

const forms: Readonly<Record<InOutNoun, Omit<NounForm, 'noun'>>> = {
  purpose: form(stores.purposeStore, purposeDraftSchema),
  ownField: form(stores.ownFieldStore, ownFieldDraftSchema),
  person: form(stores.personStore, personDraftSchema),
  place: form(stores.placeStore, placeDraftSchema),
  station: form(stationStore, stationDraftSchema),
  fixture: form(fixtureStore, fixtureDraftSchema),
  tool: form(toolStore, toolDraftSchema, {
    references: (draft) => toolReferences(partsOf(draft)),
    trimmed: (draft, lost) => trimmedTool(partsOf(draft), lost),
  }),
  job: form(jobStore, keptJobSchema, { alone: { code: 'onlyOneJob', keys: ['toolId'] } }),
  benchLog: form(benchLogStore, keptBenchLogSchema),
  happening: form(stores.happeningStore, happeningDraftSchema),
  dressing: form(stores.dressingStore, dressingDraftSchema),
  loan: form(stores.loanStore, loanDraftSchema, {
    alone: { code: 'onlyOneHolder', keys: ['toolId'], while: 'returnedAt' },
  }),
  stocktake: form(stores.stocktakeStore, stocktakeDraftSchema),
  sighting: form(stores.sightingStore, sightingDraftSchema),
  queueEntry: form(stores.queueEntryStore, queueEntryDraftSchema, {
    alone: { code: 'onlyOnceADay', keys: ['toolId', 'onDay'] },
  }),
  photo: form(stores.photoStore, photoDraftSchema),
  keptFilter: form(stores.keptFilterStore, keptFilterDraftSchema),
  toolTemplate: form(stores.toolTemplateStore, toolTemplateDraftSchema),
}

/** @returns what is known of a noun */
export const formOf = (noun: InOutNoun): NounForm => ({ noun, ...forms[noun] })

/** All of them, each after those it refers to. */
export const allForms: readonly NounForm[] = inOutNouns.map(formOf)

/** @returns the entries of a record that are its own, in the schema's order */
export const draftOf = ({ columns }: NounForm, record: Draft): Draft => {
  const draft: Record<string, unknown> = {}
  for (const { key } of columns) draft[key] = record[key]
  return draft
}

/** @returns every record that this one speaks of */
export const referencesOf = ({ columns, references }: NounForm, draft: Draft): readonly Reference[] => [
  ...columns.flatMap(({ key, holds }): readonly Reference[] =>
    holds.kind === 'record' && typeof draft[key] === 'string'
      ? [{ key, noun: holds.noun, id: draft[key] as string }]
      : [],
  ),
  ...references(draft),
]
