import type { Generated, Kysely } from 'kysely'
import type { Change, Fixture, Noun, Settings, Station, Tool } from '../contract/entities.ts'
import type { KeptFilter, OwnField, Photo, Purpose, ToolTemplate } from '../contract/extras.ts'
import type { Loan, Person, Place } from '../contract/people.ts'
import type { OwnLesson } from '../contract/teaching.ts'
import type { Dressing, Happening, QueueEntry, Sighting, Stocktake } from '../contract/work.ts'

/** What every table of a noun has: compare-and-set version, and the time of a soft delete. */
export interface RecordRow {
  readonly id: string
  readonly version: number
  readonly deletedAt: string | null
}

/** `curves` and `own` are JSON text. */
type ToolRow = Omit<Tool, 'curves' | 'own'> & RecordRow & { readonly curves: string; readonly own: string }
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
  /** Id of the first of the changes that were made as one, and are taken back as one; null: it alone. */
  readonly groupId: number | null
}

/** Highest number given out for a noun's codes; it only grows, so no code comes again. */
interface CodeCounterRow {
  readonly noun: Noun
  readonly last: number
}

/** How far somebody is in a lesson; `personId` empty: nobody said who. `answers` is JSON text. */
interface ProgressRow {
  readonly personId: string
  readonly lessonId: string
  readonly step: number
  readonly answers: string
  readonly startedAt: string
  readonly at: string
  readonly doneAt: string | null
}

/** What the file keeps of each tool by its own triggers: see migration5Search.ts. */
interface ToolStateRow {
  readonly toolId: string
  readonly holderId: string | null
  readonly dueBack: string | null
  readonly lastGroundAt: string | null
  readonly honings: number
  readonly harmed: 'yes' | 'no'
  readonly measuredReliefMm: number | null
  readonly lastSeenAt: string | null
}

/** All that a tool is found by; `toolSearch` is its full-text index. */
interface ToolWordsRow {
  readonly rowId: number
  readonly toolId: string
  readonly words: string
}

interface PlaceChainRow {
  readonly id: string
  readonly path: string
}

export interface Tables {
  readonly tool: ToolRow
  readonly station: StationRow
  readonly fixture: FixtureRow
  readonly job: JobRow
  readonly benchLog: BenchLogRow
  readonly place: Place & RecordRow
  readonly person: Person & RecordRow
  readonly loan: Loan & RecordRow
  readonly happening: Happening & RecordRow
  readonly dressing: Dressing & RecordRow
  readonly photo: Photo & RecordRow
  readonly photoBytes: { readonly hash: string; readonly bytes: Uint8Array }
  readonly purpose: Purpose & RecordRow
  readonly ownField: Omit<OwnField, 'choices'> & RecordRow & { readonly choices: string }
  readonly keptFilter: KeptFilter & RecordRow
  readonly toolTemplate: ToolTemplate & RecordRow
  readonly stocktake: Stocktake & RecordRow
  readonly sighting: Sighting & RecordRow
  readonly queueEntry: QueueEntry & RecordRow
  readonly lesson: OwnLesson & RecordRow
  readonly progress: ProgressRow
  readonly authorisation: { readonly personId: string; readonly at: string; readonly who: string }
  readonly setWork: {
    readonly personId: string
    readonly lessonId: string
    readonly setAt: string
    readonly dueOn: string | null
  }
  readonly toolState: ToolStateRow
  readonly toolWords: ToolWordsRow
  readonly toolSearch: { readonly rowid: number; readonly words: string }
  readonly placeChain: PlaceChainRow
  readonly kindName: { readonly kind: string; readonly words: string }
  readonly settings: SettingsRow
  readonly change: ChangeRow
  readonly codeCounter: CodeCounterRow
}

/** The query builder over the rack's file; inside a write it is the transaction. */
export type Database = Kysely<Tables>
