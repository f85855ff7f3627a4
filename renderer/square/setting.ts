import { create } from 'zustand'
import { type SquareReading, squared } from '../../geometry/squareness.ts'

/** Gaps under a square, the second from the other side where it was tried. */
export interface Gaps {
  readonly gapMm: number
  readonly otherGapMm: number | null
  readonly overMm: number
}

/** A reading as it was taken, with what was typed. */
export interface TakenReading extends SquareReading, Gaps {
  readonly id: number
  /** Line of the bench log that keeps it; null: none. */
  readonly logId: string | null
}

/** How the edge was ground that a square is put to. */
export type Ground = Omit<SquareReading, 'skewDeg' | 'errorDeg' | 'clamping' | 'dressed'>

export interface SquareSetting {
  readonly gapMm: number | null
  readonly otherGapMm: number | null
  readonly overMm: number
  readonly clamping: number
  readonly dressed: boolean
  /** Skew that is wanted of the edge (degrees). */
  readonly wantedDeg: number
  readonly readings: readonly TakenReading[]
}

/** A small try square reaches so far over an iron (mm). */
const FIRST_OVER_MM = 50

const blank: SquareSetting = {
  gapMm: null,
  otherGapMm: null,
  overMm: FIRST_OVER_MM,
  clamping: 1,
  dressed: false,
  wantedDeg: 0,
  readings: [],
}

/** By fixture and station together: what turns an edge belongs to them, whichever iron shows it. */
const useSettings = create<Readonly<Record<string, SquareSetting>>>()(() => ({}))

/** @returns the readings taken at a place in this window */
export const useSquare = (place: string): SquareSetting => useSettings((all) => all[place] ?? blank)

/** Changes what was taken at a place. */
export const changeSquare = (place: string, patch: Partial<SquareSetting>): void =>
  useSettings.setState((all) => ({ [place]: { ...(all[place] ?? blank), ...patch } }))

let lastId = 0

const taken = (
  { gapMm, otherGapMm, overMm }: Gaps,
  rest: Omit<SquareReading, 'skewDeg' | 'errorDeg'>,
  logId: string | null,
): TakenReading => {
  const { skewDeg, errorDeg } = squared(gapMm, otherGapMm, overMm)
  return { ...rest, id: ++lastId, logId, gapMm, otherGapMm, overMm, skewDeg, errorDeg }
}

/** Adds a reading to those of a place, and is ready for the next. */
export const takeReading = (place: string, gaps: Gaps, ground: Ground, logId: string | null): void =>
  useSettings.setState((all) => {
    const now = all[place] ?? blank
    const { clamping, dressed, readings } = now
    const reading = taken(gaps, { ...ground, clamping, dressed }, logId)
    return { [place]: { ...now, gapMm: null, otherGapMm: null, readings: [...readings, reading] } }
  })

/** A reading that the bench log keeps. */
export interface KeptReading extends Ground {
  readonly logId: string
  readonly gapMm: number
  readonly overMm: number
}

/** Sets earlier readings before those in hand, each a clamping of its own, so that those in hand count on from there. */
export const withEarlier = (now: SquareSetting, earlier: readonly KeptReading[]): SquareSetting => {
  const inHand = [...new Set([...now.readings.map(({ clamping }) => clamping), now.clamping])]
  const countedOn = (clamping: number) => earlier.length + 1 + inHand.indexOf(clamping)
  const before = earlier.map(({ logId, gapMm, overMm, ...ground }, i) =>
    taken({ gapMm, otherGapMm: null, overMm }, { ...ground, clamping: i + 1, dressed: false }, logId),
  )
  const after = now.readings.map((reading) => ({ ...reading, clamping: countedOn(reading.clamping) }))
  return { ...now, clamping: countedOn(now.clamping), readings: [...before, ...after] }
}

/** Takes earlier readings into the list of a place. */
export const takeEarlier = (place: string, earlier: readonly KeptReading[]): void =>
  useSettings.setState((all) => ({ [place]: withEarlier(all[place] ?? blank, earlier) }))
