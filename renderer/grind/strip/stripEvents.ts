import { meanReliefMm } from '../../../geometry/edge.ts'
import type { Job } from '../../../geometry/job.ts'
import type { HistoryRow } from '../../worker/protocol.ts'
import type { EventKind, RunEvent } from '../../worker/runEvents.ts'

/** What the strip marks: what the worker notes, and the wanted relief, which only the window knows. */
export type StripKind = EventKind | 'reliefReached'

/** A mark of the strip. */
export interface StripEvent {
  readonly kind: StripKind
  readonly step: number
}

/** Freshening ends where the cut reaches the edge; reshaping where the burr runs all along. */
const ofNoUse: Readonly<Record<Job['aim']['task'], EventKind>> = { freshen: 'burrAllAlong', reshape: 'edgeReached' }

/** The events of a run worth going back to, in order. @param wantedMm null: no relief is wanted */
export const stripEvents = (
  events: readonly RunEvent[],
  history: readonly HistoryRow[],
  wantedMm: number | null,
  { aim, motion }: Job,
): readonly StripEvent[] => {
  const sweep = wantedMm === null || wantedMm <= 0 ? -1 : history.findIndex((row) => meanReliefMm(row) >= wantedMm)
  const reached: StripEvent[] = sweep > 0 ? [{ kind: 'reliefReached', step: sweep * motion.stepsPerSweep }] : []
  return [...events.filter(({ kind }) => kind !== ofNoUse[aim.task]), ...reached].sort((a, b) => a.step - b.step)
}

/** Where a mark's words stand. */
export interface PlacedMark extends StripEvent {
  readonly text: string
  /** Where it happened. */
  readonly xPx: number
  /** Where its words begin; null: there is no room for them, and the dot stands alone. */
  readonly textPx: number | null
  readonly row: number
}

/** Average width of a letter of the small text as a share of its size, and room round it (px). */
const LETTER_SHARE = 0.47
const ROOM_PX = 26
/** Words further than this from their dot no longer read as its own (px). */
const MOST_SHIFT_PX = 150
const ROWS = 2

/** Lays the words out in rows, from left to right, each as near to its dot as the words before it let it. */
export const placeMarks = (
  events: readonly (StripEvent & { readonly text: string })[],
  xOf: (step: number) => number,
  widthPx: number,
  textPx: number,
): readonly PlacedMark[] => {
  const ends = Array.from({ length: ROWS }, () => Number.NEGATIVE_INFINITY)
  return events.map((event) => {
    const xPx = xOf(event.step)
    const longPx = event.text.length * LETTER_SHARE * textPx + ROOM_PX
    const wishPx = Math.min(xPx, widthPx - longPx)
    const row = ends.indexOf(Math.min(...ends))
    const free = ends.findIndex((endPx) => endPx <= wishPx)
    const chosen = free === -1 ? row : free
    const startPx = Math.max(wishPx, ends[chosen] as number)
    const fits = startPx - xPx <= MOST_SHIFT_PX && startPx + longPx <= widthPx + ROOM_PX
    if (fits) ends[chosen] = startPx + longPx
    return { ...event, xPx, textPx: fits ? startPx : null, row: chosen }
  })
}
