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

/** Average width of a letter of the small text as a share of its size, and room between two words (px). */
const LETTER_SHARE = 0.48
const ROOM_PX = 14
/** Words further than this from their dot no longer read as its own (px). */
const MOST_SHIFT_PX = 150
const ROWS = 2

/** What is being laid out: where a row's marks stand so far. */
type Laid = Omit<PlacedMark, 'textPx'> & { textPx: number | null; readonly longPx: number }

/** Makes room at a row's end by moving its marks to the left, the last first. @returns whether there was room */
const moveLeft = (row: readonly Laid[], endPx: number): boolean => {
  const moved: [Laid, number][] = []
  let free = endPx
  for (const mark of row.toReversed()) {
    const startPx = mark.textPx as number
    if (startPx + mark.longPx <= free) break
    free -= mark.longPx
    if (free < 0 || mark.xPx - free > MOST_SHIFT_PX) return false
    moved.push([mark, free])
  }
  for (const [mark, startPx] of moved) mark.textPx = startPx
  return true
}

/**
 * Lays the words out in rows, from left to right, each as near to its dot as the words before it let it; at the end, where
 * there is no room left, those before it give way.
 */
export const placeMarks = (
  events: readonly (StripEvent & { readonly text: string })[],
  xOf: (step: number) => number,
  widthPx: number,
  textPx: number,
): readonly PlacedMark[] => {
  const rows: Laid[][] = Array.from({ length: ROWS }, () => [])
  const endOf = (row: readonly Laid[]): number => {
    const last = row.at(-1)
    return last === undefined ? Number.NEGATIVE_INFINITY : (last.textPx as number) + last.longPx
  }
  return events.map((event) => {
    const xPx = xOf(event.step)
    const longPx = event.text.length * LETTER_SHARE * textPx + ROOM_PX
    const wishPx = Math.min(xPx, widthPx - longPx)
    const ends = rows.map(endOf)
    const free = ends.findIndex((endPx) => endPx <= wishPx)
    const first = free === -1 ? ends.indexOf(Math.min(...ends)) : free
    const startPx = Math.max(wishPx, ends[first] as number)
    const lastPx = widthPx + ROOM_PX - longPx
    const fits = startPx - xPx <= MOST_SHIFT_PX && startPx <= lastPx
    const made = fits || lastPx - xPx > MOST_SHIFT_PX ? -1 : rows.findIndex((row) => moveLeft(row, lastPx))
    const row = made === -1 ? first : made
    const mark: Laid = { ...event, xPx, textPx: fits ? startPx : made === -1 ? null : lastPx, row, longPx }
    if (mark.textPx !== null) rows[row]?.push(mark)
    return mark
  })
}
