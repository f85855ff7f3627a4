import type { AimCurve } from '../../geometry/aimCurve.ts'
import type { Bearing } from '../../geometry/balance.ts'
import type { Signature } from '../../geometry/diagnose.ts'
import type { Job } from '../../geometry/job.ts'
import type { Findings } from '../../geometry/lesson/findings.ts'
import type { Change, Lesson } from '../../geometry/lesson/lesson.ts'
import type { Report } from '../../geometry/report.ts'
import type { Problem, Result } from '../../geometry/result.ts'
import type { Schedule } from '../../geometry/schedule.ts'
import type { PlanAnswer } from '../../geometry/solveJob.ts'
import type { RunEvent } from './runEvents.ts'

/**
 * What window and solver worker say to each other. No memory is shared: arrays travel as transferables, and the window
 * gives them back by `give`, so a running grind allocates nothing. Arrays of `Frame` are laid out as in geometry/pose.ts.
 *
 * A run is one grind of one job from its first step. A newer `start` ends the older run; what still comes from it carries
 * its number and is dropped by the window.
 */
export type ToWorker =
  | { readonly type: 'solve'; readonly id: number; readonly job: Job }
  | { readonly type: 'schedule'; readonly job: Job; readonly curve: AimCurve }
  | { readonly type: 'diagnose'; readonly job: Job }
  /** What a step of a lesson needs, with what was moved in it. */
  | {
      readonly type: 'teach'
      readonly lesson: Lesson
      readonly step: number
      readonly moved: Change
      readonly seed: number
    }
  | { readonly type: 'start'; readonly run: number; readonly job: Job }
  | { readonly type: 'play'; readonly sweepsPerSecond: number }
  | { readonly type: 'pause' }
  /** To this step exactly, forwards or back; the grind is paused there. */
  | { readonly type: 'seek'; readonly step: number }
  /** Takes the blade in hand, or moves the hand: while it is held the wheel grinds, load at this share of the reach. */
  | { readonly type: 'hold'; readonly share: number }
  | { readonly type: 'release' }
  | { readonly type: 'giveUp' }
  /** So many steps by hand at once, load at this share of the reach. */
  | { readonly type: 'press'; readonly share: number; readonly steps: number }
  /** Steps that were made by hand before, made again from where the run stands. */
  | { readonly type: 'remake'; readonly path: Float64Array }
  | ({ readonly type: 'give' } & FrameArrays)

/** The arrays of a frame, lent to the window. */
export interface FrameArrays {
  readonly vMm: Float64Array<ArrayBuffer>
  readonly pressureNPerMm: Float64Array<ArrayBuffer>
}

/** What stays the same through a run. */
export interface RunShape {
  readonly run: number
  readonly acrossCount: number
  readonly throughCount: number
  readonly uMm: Float64Array
  readonly nMm: Float64Array
  readonly vStartMm: Float64Array
  readonly stepsPerSweep: number
  readonly sweeps: number
}

/** One moment of a run. While it plays, the pose stands between two steps; the blade is that of the later one. */
export interface Frame extends FrameArrays {
  readonly run: number
  readonly step: number
  /** Sweeps done, whole ones and the part of the one under way. */
  readonly sweep: number
  /** It goes on, played or by hand. */
  readonly playing: boolean
  /** The hand holds the blade. */
  readonly held: boolean
  /** Last step of the run as it stands; it follows the hand. */
  readonly lastStep: number
  /** From this step on the run is made by hand; null: it is as planned. */
  readonly handFromStep: number | null
  readonly yawRad: number
  readonly tiltRad: number
  readonly traverseMm: number
  readonly loadPlaceMm: number
  readonly bearing: Bearing
  readonly reliefLeftMm: number
  readonly reliefRightMm: number
  readonly volumeRemovedMm3: number
  /** Share of the bevel that still carries ink, 0 to 1. */
  readonly inkLeftShare: number
}

/** Relief after each whole sweep; entry 0 is the start. */
export interface HistoryRow {
  readonly reliefLeftMm: number
  readonly reliefRightMm: number
  readonly inkLeftShare: number
}

export type FromWorker =
  /** Plan's answer, before the whole report is there. */
  | { readonly type: 'answered'; readonly id: number; readonly answer: PlanAnswer }
  | { readonly type: 'solved'; readonly id: number; readonly result: Result<Report> }
  /** How far the search for a schedule is, 0 to 1, and what it found. */
  | { readonly type: 'scheduling'; readonly share: number }
  | { readonly type: 'scheduled'; readonly result: Result<Schedule> }
  | { readonly type: 'taught'; readonly result: Result<Findings> }
  | { readonly type: 'diagnosed'; readonly signatures: readonly Signature[] }
  | { readonly type: 'started'; readonly shape: RunShape }
  | { readonly type: 'frame'; readonly frame: Frame }
  /** Sweeps worked out ahead, from sweep `from` on; what was told of later ones before is void. */
  | { readonly type: 'history'; readonly run: number; readonly from: number; readonly rows: readonly HistoryRow[] }
  /** All that is known to happen for the first time in the run, in order. */
  | { readonly type: 'events'; readonly run: number; readonly events: readonly RunEvent[] }
  /** What the hand has made, when it lets go. */
  | { readonly type: 'handMade'; readonly run: number; readonly fromStep: number; readonly path: Float64Array }
  /** The run ends at this step, or at 0 never began; without problems, it goes on after all. */
  | { readonly type: 'trouble'; readonly run: number; readonly problems: readonly Problem[] }
