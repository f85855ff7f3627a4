import type { Job } from '../../../geometry/job.ts'
import type { LessonView } from '../../../geometry/lesson/lesson.ts'

/** The machine as a class sees it: a job at a moment. */
export interface ShownModel {
  readonly job: Job
  /** Step of the run that the teacher's window stands at. */
  readonly step: number
  readonly lifted: boolean
  readonly dot: 'left' | 'right'
  readonly rotation: 'intoEdge' | 'awayFromEdge'
  readonly cooling: 'wet' | 'dry'
  readonly views: readonly LessonView[]
  readonly wantedMm: number | null
  readonly leastDeepMm: number
}

/** Everything that a class sees; nothing of it is worked out there. Texts have their figures in them. */
export interface Shown {
  readonly heading: string
  readonly text: readonly string[]
  readonly question: string
  readonly choices: readonly string[]
  /** Said after the answer; empty before. */
  readonly verdict: string
  readonly model: ShownModel | null
  /** Where the teacher points, as shares of the model's picture; null: nowhere. */
  readonly pointer: readonly [across: number, down: number] | null
  /** Kept beside what goes on, to compare. */
  readonly frozen: ShownModel | null
}

/** What the teacher's window and the class view say to each other. */
type Said = { readonly shows: Shown } | { readonly here: boolean; readonly seen: boolean }

/** Name of the class view's own window, and of the channel to it. */
export const CLASS_WINDOW = 'camberwright-class'

/** The teacher's end. @param onHere told when a class view opens (it wants to see everything), goes out of sight, and closes */
export const openTeacherEnd = (onHere: (here: boolean, seen: boolean) => void) => {
  const channel = new BroadcastChannel(CLASS_WINDOW)
  channel.onmessage = ({ data }: MessageEvent<Said>) => {
    if ('here' in data) onHere(data.here, data.seen)
  }
  return {
    show: (shows: Shown): void => channel.postMessage({ shows } satisfies Said),
    close: (): void => channel.close(),
  }
}

/** The class view's end. @param onShown told what to show @returns how to end it */
export const openClassEnd = (onShown: (shown: Shown) => void): (() => void) => {
  const channel = new BroadcastChannel(CLASS_WINDOW)
  // A window whose screen is gone, or that others cover, is hidden.
  const say = (here: boolean): void =>
    channel.postMessage({ here, seen: document.visibilityState === 'visible' } satisfies Said)
  const look = (): void => say(true)
  // A page that goes is hidden after that: it is not there again for it.
  const leave = (): void => {
    document.removeEventListener('visibilitychange', look)
    say(false)
  }
  channel.onmessage = ({ data }: MessageEvent<Said>) => {
    if ('shows' in data) onShown(data.shows)
  }
  addEventListener('pagehide', leave)
  document.addEventListener('visibilitychange', look)
  say(true)
  return () => {
    removeEventListener('pagehide', leave)
    leave()
    channel.close()
  }
}
