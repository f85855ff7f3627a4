import { create } from 'zustand'
import { type SquareReading, skewError, skewOfGap } from '../../geometry/squareness.ts'

/** A reading as it was taken, with what was typed. */
export interface TakenReading extends SquareReading {
  readonly id: number
  readonly gapMm: number
  readonly overMm: number
}

interface SquareSetting {
  readonly gapMm: number | null
  readonly overMm: number
  readonly clamping: number
  /** Skew that is wanted of the edge (degrees). */
  readonly wantedDeg: number
  readonly readings: readonly TakenReading[]
}

/** A small try square reaches so far over an iron (mm). */
const FIRST_OVER_MM = 50

const blank: SquareSetting = { gapMm: null, overMm: FIRST_OVER_MM, clamping: 1, wantedDeg: 0, readings: [] }

/** By fixture and station together: what turns an edge belongs to them, whichever iron shows it. */
const useSettings = create<Readonly<Record<string, SquareSetting>>>()(() => ({}))

/** @returns the readings taken at a place in this window */
export const useSquare = (place: string): SquareSetting => useSettings((all) => all[place] ?? blank)

/** Changes what was taken at a place. */
export const changeSquare = (place: string, patch: Partial<SquareSetting>): void =>
  useSettings.setState((all) => ({ [place]: { ...(all[place] ?? blank), ...patch } }))

let lastId = 0

/** Adds a reading to those of a place, and is ready for the next. */
export const takeReading = (
  place: string,
  setting: SquareSetting,
  how: Omit<SquareReading, 'skewDeg' | 'errorDeg' | 'clamping'>,
): void => {
  const { gapMm, overMm, clamping, readings } = setting
  if (gapMm === null) return
  const reading: TakenReading = {
    ...how,
    id: ++lastId,
    gapMm,
    overMm,
    clamping,
    skewDeg: skewOfGap(gapMm, overMm),
    errorDeg: skewError(overMm),
  }
  changeSquare(place, { gapMm: null, readings: [...readings, reading] })
}
