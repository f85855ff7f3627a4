import { expectedLeaves, leavesAlike } from '../../geometry/expectedLeaves.ts'
import { type MeasuredEdge, readLeaves } from '../../geometry/measure.ts'
import type { Report } from '../../geometry/report.ts'
import type { Result } from '../../geometry/result.ts'
import { type BenchLog, type BenchLogDraft, stages } from '../../main/contract/entities.ts'

/** Leaves that pass, as typed; null: not yet. */
export interface Leaves {
  readonly leftMm: number | null
  readonly halfwayMm: number | null
  readonly rightMm: number | null
}

export const noLeaves: Leaves = { leftMm: null, halfwayMm: null, rightMm: null }

/** The fields of a reading by the keys that `readLeaves` names in its problems. */
export const pathOf: Readonly<Record<keyof Leaves, string>> = {
  leftMm: 'cornerLeftMm',
  halfwayMm: 'halfwayLeftMm',
  rightMm: 'cornerRightMm',
}

/** @returns the edge that leaves show; null while a corner is not taken */
export const edgeOfLeaves = (
  { leftMm, halfwayMm, rightMm }: Leaves,
  stepMm: number,
  widthMm: number,
): Result<MeasuredEdge> | null =>
  leftMm === null || rightMm === null
    ? null
    : readLeaves({
        widthMm,
        cornerLeftMm: leftMm,
        cornerRightMm: rightMm,
        halfwayLeftMm: halfwayMm,
        halfwayRightMm: null,
        stepMm,
      })

/** @returns the leaves of a line of the bench log */
export const leavesOfLine = (line: BenchLog): Leaves => ({
  leftMm: line.reliefLeftMm,
  halfwayMm: line.reliefHalfwayMm,
  rightMm: line.reliefRightMm,
})

/** Leaves are written as the card prints them (mm). */
const PRINTED = 100

const printed = (mm: number): number => Math.round(mm * PRINTED) / PRINTED

/** @returns the leaves that the card of this job tells to expect */
export const leavesOfCard = (report: Report): Leaves => {
  const { corner, halfway } = expectedLeaves(report)
  const mean = (corner.left + corner.right) / 2
  const alike = leavesAlike(corner)
  return {
    leftMm: printed(alike ? mean : corner.left),
    halfwayMm: printed((halfway.left + halfway.right) / 2),
    rightMm: printed(alike ? mean : corner.right),
  }
}

const sameDay = (a: Date, b: Date): boolean => a.toDateString() === b.toDateString()

/** @returns what a reading now is most likely of: the first of a day as found, then as ground, then as honed */
export const nextStage = (newest: BenchLog | undefined, now: Date): BenchLogDraft['stage'] => {
  if (newest === undefined || !sameDay(new Date(newest.at), now)) return 'asFound'
  return stages[Math.min(stages.indexOf(newest.stage) + 1, stages.length - 1)] as BenchLogDraft['stage']
}

/** Notices of leaves too unequal to be one relief. */
const UNEQUAL: readonly string[] = ['leavesUnequal', 'restsOnCorner']

/** @returns from where to where the relief may lie while the straightedge lay askew; null where the leaves are equal */
export const askewOf = ({ notices }: MeasuredEdge): readonly [leastMm: number, mostMm: number] | null => {
  const unequal = notices.find(({ code }) => UNEQUAL.includes(code))
  return unequal ? [Number(unequal.params.leastMm), Number(unequal.params.mostMm)] : null
}

/** @returns from where to where the relief may lie: the leaf passes, the next one does not */
export const spanOf = (edge: MeasuredEdge, stepMm: number): readonly [leastMm: number, mostMm: number] => {
  const [leastMm, mostMm] = askewOf(edge) ?? [edge.reliefMm, edge.reliefMm]
  return [leastMm, mostMm + stepMm]
}

/** How a measured relief stands to another: within what the leaves can tell, or off by at least so much. */
export interface Against {
  readonly verdict: 'as' | 'more' | 'less'
  readonly byMm: number
}

/** A difference that would be written as nought is none (mm). */
const UNTOLD_MM = 0.005

/** @returns how a span measured stands to a relief wanted or predicted */
export const against = ([leastMm, mostMm]: readonly [number, number], otherMm: number): Against => {
  if (leastMm - otherMm >= UNTOLD_MM) return { verdict: 'more', byMm: leastMm - otherMm }
  if (otherMm - mostMm >= UNTOLD_MM) return { verdict: 'less', byMm: otherMm - mostMm }
  return { verdict: 'as', byMm: 0 }
}
