import { create } from 'zustand'
import type { Job, JobInput } from '../../geometry/job.ts'
import type { Report } from '../../geometry/report.ts'
import type { Problem } from '../../geometry/result.ts'
import type { PlanAnswer } from '../../geometry/solveJob.ts'
import type { CallOutput } from '../../main/contract/calls.ts'
import type { Change, Fixture, JobRecord, Settings, Station, Tool, ToolLine } from '../../main/contract/entities.ts'
import type { OwnField, Purpose } from '../../main/contract/extras.ts'
import type { Standing } from '../../main/contract/finding.ts'
import type { Person, Place } from '../../main/contract/people.ts'

/** One sentence in the status line; a change carries its undo with it. */
export interface Message {
  /** Key of the text catalogue. */
  readonly key: string
  readonly params: Problem['params']
  /** Null: there is nothing to take back. */
  readonly changeId: number | null
  /** What an undo took back; its name is put in as `record`. */
  readonly record?: Pick<Change, 'noun' | 'label'>
  /** A file that was made; it can be dragged out of the window. */
  readonly file: { readonly address: string; readonly fileName: string } | null
}

/** A new job, or a way to it from the job as it stands. */
export type JobChange = Job | JobInput | ((document: Job) => Job | JobInput)

/** What else an edit of the job says. */
export interface EditOptions {
  /** Path of the field that was typed in: a problem is shown there. */
  readonly at?: string
  readonly stationId?: string
  readonly fixtureId?: string
}

/** What the window knows. Records are copies of the host's; only the host changes them. */
export interface App {
  /** False until the rack was read for the first time. */
  readonly ready: boolean
  /** The host could not be reached, or refused: nothing can be shown. */
  readonly trouble: Problem | null
  readonly workshop: CallOutput<'workshop.get'> | null
  readonly settings: Settings
  /** The first tools of the rack by code, for other screens to choose from; the rack itself asks for what it shows. */
  readonly tools: readonly ToolLine[]
  readonly standing: Standing
  /** Counts changes of tools and of what their list tells, by whomever: what was found is found again. */
  readonly rackChanges: number
  /** Counts changes of pictures. */
  readonly photoChanges: number
  /** Counts changes of the logs of wheels. */
  readonly dressingChanges: number
  /** Counts changes of the day's work: queue, stocktake, loans. */
  readonly dayChanges: number
  /** Counts changes of lessons. */
  readonly lessonChanges: number
  /** Counts changes of what is known of those who learn. */
  readonly learnerChanges: number
  readonly stations: readonly Station[]
  readonly fixtures: readonly Fixture[]
  readonly places: readonly Place[]
  readonly people: readonly Person[]
  readonly purposes: readonly Purpose[]
  readonly ownFields: readonly OwnField[]
  /** The tool in hand. */
  readonly tool: Tool | null
  /** Its job; the host keeps it in step with tool, station and fixture as their records stand. */
  readonly job: JobRecord | null
  readonly station: Station | null
  readonly fixture: Fixture | null
  /** A job to be looked at on the model instead of the one in hand, which stays as it is; any edit ends it. */
  readonly trial: { readonly of: 'fault' | 'file'; readonly job: Job; readonly name: string } | null
  /** The last good report of the tool in hand. */
  readonly report: Report | null
  /** Plan's answer to the job in hand while its report is being worked out. */
  readonly answer: PlanAnswer | null
  readonly solving: boolean
  /** Why the last edit was not taken, or why the job cannot be solved. */
  readonly problems: readonly Problem[]
  /** Path of the field whose edit was not taken. */
  readonly problemAt: string | null
  readonly message: Message | null
  /** Counts changes of the bench log, by whomever: what was read from it is read again. */
  readonly logChanges: number
  /** Checks, keeps and solves a changed job. @returns false when it was not taken; `problems` says why */
  editJob(change: JobChange, options?: EditOptions): Promise<boolean>
}

const nothingInHand = { tool: null, job: null, station: null, fixture: null, trial: null, report: null, answer: null }

/** The window's one store. What is read stands in readRack.ts, what is changed in storeRack.ts and storeJob.ts. */
export const useApp = create<App>()(() => ({
  ready: false,
  trouble: null,
  workshop: null,
  settings: {
    language: 'en',
    lengthUnit: 'mm',
    theme: 'system',
    singleKeys: 'on',
    stayAwake: 'on',
    columns: '',
    copiesMostMb: 500,
  },
  tools: [],
  standing: { tools: 0, curved: 0, lent: 0, overdue: 0, due: 0 },
  rackChanges: 0,
  photoChanges: 0,
  dressingChanges: 0,
  dayChanges: 0,
  lessonChanges: 0,
  learnerChanges: 0,
  stations: [],
  fixtures: [],
  places: [],
  people: [],
  purposes: [],
  ownFields: [],
  ...nothingInHand,
  solving: false,
  problems: [],
  problemAt: null,
  message: null,
  logChanges: 0,
  /** Given by storeJob.ts, which knows the host and the solver. */
  editJob: () => Promise.resolve(false),
}))

/** Puts the tool in hand back. */
export const emptyHands = (): void =>
  useApp.setState({ ...nothingInHand, solving: false, problems: [], problemAt: null })

/** Says something in the status line. */
export const say = (
  key: string,
  params: Message['params'] = {},
  changeId: Message['changeId'] = null,
  file: Message['file'] = null,
): void => useApp.setState({ message: { key, params, changeId, file } })

/** Empties the status line: what was said there belongs to the screen that is left; the header's undo still takes it back. */
export const sayNothing = (): void => useApp.setState({ message: null })

/** Says a problem in the status line. */
export const sayProblem = ({ code, params }: Problem): void => say(`problems:${code}`, params)
