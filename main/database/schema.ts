import type { Generated, Kysely } from 'kysely'
import type { Change, Fixture, Noun, Settings, Station, Tool } from '../contract/entities.ts'

/** What every table of a noun has: compare-and-set version, and the time of a soft delete. */
export interface RecordRow {
  readonly id: string
  readonly version: number
  readonly deletedAt: string | null
}

type ToolRow = Tool & RecordRow & { readonly searchText: string }
type StationRow = Station & RecordRow
type FixtureRow = Fixture & RecordRow

/** `document` and `toolAim` are JSON text. */
interface JobRow extends RecordRow {
  readonly code: string
  readonly toolId: string
  readonly stationId: string
  readonly fixtureId: string
  readonly document: string
  readonly toolAim: string
  readonly usedAt: string
}

/** `points`, `job` and `report` are JSON text; job and report kept as they were when the line was written. */
interface BenchLogRow extends RecordRow {
  readonly code: string
  readonly toolId: string
  readonly jobId: string | null
  readonly stage: string
  readonly reliefLeftMm: number | null
  readonly reliefRightMm: number | null
  readonly reliefHalfwayMm: number | null
  readonly leafStepMm: number | null
  readonly method: string
  readonly points: string | null
  readonly groundMinutes: number | null
  readonly setBackMm: number | null
  readonly squareGapMm: number | null
  readonly squareOverMm: number | null
  readonly counts: 'yes' | 'no'
  readonly stationId: string | null
  readonly fixtureId: string | null
  readonly task: string | null
  readonly sweeps: number | null
  readonly freePlayLeftMm: number | null
  readonly freePlayRightMm: number | null
  readonly modelReliefMm: number | null
  readonly who: string
  readonly note: string
  readonly at: string
  readonly engineVersion: string | null
  readonly job: string | null
  readonly report: string | null
}

type SettingsRow = Settings & RecordRow

/**
 * One change. `before` and `after` are records as JSON text, null where there was or is none. `version` is the record's
 * after the change. `unasked` marks what the program did by itself, which the undo list leaves out.
 */
export interface ChangeRow {
  readonly id: Generated<number>
  readonly at: string
  readonly who: string
  readonly noun: Noun
  readonly entityId: string
  readonly action: Change['action']
  readonly label: string
  readonly version: number
  readonly before: string | null
  readonly after: string | null
  readonly undoes: number | null
  readonly undoneBy: number | null
  readonly unasked: number
  readonly schemaVersion: number
}

/** Highest number given out for a noun's codes; it only grows, so no code comes again. */
interface CodeCounterRow {
  readonly noun: Noun
  readonly last: number
}

export interface Tables {
  readonly tool: ToolRow
  readonly station: StationRow
  readonly fixture: FixtureRow
  readonly job: JobRow
  readonly benchLog: BenchLogRow
  readonly settings: SettingsRow
  readonly change: ChangeRow
  readonly codeCounter: CodeCounterRow
}

/** The query builder over the rack's file; inside a write it is the transaction. */
export type Database = Kysely<Tables>
