import { burrAllAlong } from '../../geometry/band.ts'
import type { GrindState } from '../../geometry/grind.ts'
import { INK_THICKNESS_MM } from '../../geometry/ink.ts'

/** What may be worth going back to in a run, in the order it is asked for. */
export const eventKinds = [
  'firstTouch',
  'stopLeft',
  'stopRight',
  'inkGoneLeft',
  'inkGoneMiddle',
  'inkGoneRight',
  'heelReached',
  'edgeReached',
  'burrAllAlong',
] as const
export type EventKind = (typeof eventKinds)[number]

/** Something that happened in a run for the first time, at the end of this step. */
export interface RunEvent {
  readonly kind: EventKind
  readonly step: number
}

const lost = ({ vMm, vStartMm }: GrindState, at: number): boolean =>
  (vMm[at] as number) - (vStartMm[at] as number) > INK_THICKNESS_MM

/** Whether every row of a column has lost its ink. */
const bare = (state: GrindState, i: number): boolean => {
  const from = i * state.throughCount
  for (let at = from; at < from + state.throughCount; at++) if (!lost(state, at)) return false
  return true
}

/** Whether any column has lost its ink in this row. */
const reached = (state: GrindState, j: number): boolean => {
  for (let at = j; at < state.vMm.length; at += state.throughCount) if (lost(state, at)) return true
  return false
}

const happened: Readonly<Record<EventKind, (state: GrindState) => boolean>> = {
  firstTouch: ({ volumeRemovedMm3 }) => volumeRemovedMm3 > 0,
  stopLeft: ({ bearing }) => bearing === 'left',
  stopRight: ({ bearing }) => bearing === 'right',
  inkGoneLeft: (state) => bare(state, 0),
  inkGoneMiddle: (state) => bare(state, Math.floor(state.acrossCount / 2)),
  inkGoneRight: (state) => bare(state, state.acrossCount - 1),
  heelReached: (state) => reached(state, state.throughCount - 1),
  edgeReached: (state) => reached(state, 0),
  burrAllAlong,
}

/**
 * Adds what happens for the first time at the state's step. Which side is left follows the field: column 0.
 * @returns whether anything did
 */
export const noteEvents = (found: RunEvent[], state: GrindState): boolean => {
  const before = found.length
  for (const kind of eventKinds) {
    if (found.some((event) => event.kind === kind)) continue
    if (happened[kind](state)) found.push({ kind, step: state.step })
  }
  return found.length > before
}
