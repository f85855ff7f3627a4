import type { Problem } from '../../geometry/result.ts'
import type { BenchLog } from '../../main/contract/entities.ts'
import { type Iron, type Read, readOf, readOfLine, type Taken } from './read.ts'
import { type Leaves, leavesOfLine } from './reading.ts'

/** The edge that the screen shows: the one being typed, or else the newest of the log that shows one. */
export interface Shown extends Read {
  readonly method: Taken['method']
  readonly leaves: Leaves
  readonly stepMm: number
  /** The line of the log that it comes from; null: it is being typed. */
  readonly line: BenchLog | null
}

/** What is being typed shows nothing yet, or cannot be of one edge. */
export interface Unshown {
  readonly problems: readonly Problem[]
  /** Something is typed already. */
  readonly begun: boolean
}

export type Showing = { readonly shown: Shown } | ({ readonly shown: null } & Unshown)

const ofLog = (readings: readonly BenchLog[], iron: Iron): Shown | null => {
  const [line] = readings
  const read = line ? readOfLine(line, iron) : null
  return line && read
    ? { ...read, method: line.method, leaves: leavesOfLine(line), stepMm: line.leafStepMm as number, line }
    : null
}

const begunOf = ({ method, leaves, points }: Taken): boolean =>
  method === 'leaves' ? Object.values(leaves).some((mm) => mm !== null) : points.length > 0

/** @returns what a reading being taken shows, or, while none is, what the newest line of the log showed */
export const showing = (taken: Taken, readings: readonly BenchLog[], iron: Iron): Showing => {
  const begun = begunOf(taken)
  if (!begun) {
    const last = ofLog(readings, iron)
    return last ? { shown: last } : { shown: null, problems: [], begun }
  }
  const read = readOf(taken, iron)
  if (read?.ok) return { shown: { ...read.value, ...taken, line: null } }
  return { shown: null, problems: read?.problems ?? [], begun }
}
