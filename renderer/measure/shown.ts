import type { MeasuredEdge } from '../../geometry/measure.ts'
import type { Problem } from '../../geometry/result.ts'
import type { BenchLog } from '../../main/contract/entities.ts'
import { edgeOfLeaves, edgeOfLine, type Leaves, leavesOfLine } from './reading.ts'

/** The edge that the screen shows: the one being typed, or else the newest of the log that shows one. */
export interface Shown {
  readonly edge: MeasuredEdge
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

const ofLog = (readings: readonly BenchLog[], widthMm: number): Shown | null => {
  const [line] = readings
  const edge = line ? edgeOfLine(line, widthMm) : null
  return line && edge ? { edge, leaves: leavesOfLine(line), stepMm: line.leafStepMm as number, line } : null
}

/** @returns what leaves being typed show, or, while none are, what the newest line of the log showed */
export const showing = (leaves: Leaves, stepMm: number, readings: readonly BenchLog[], widthMm: number): Showing => {
  const begun = Object.values(leaves).some((mm) => mm !== null)
  if (!begun) {
    const last = ofLog(readings, widthMm)
    return last ? { shown: last } : { shown: null, problems: [], begun }
  }
  const read = edgeOfLeaves(leaves, stepMm, widthMm)
  if (read?.ok) return { shown: { edge: read.value, leaves, stepMm, line: null } }
  return { shown: null, problems: read?.problems ?? [], begun }
}
