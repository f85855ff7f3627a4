import { type MeasuredEdge, readLeaves } from '../../../geometry/measure.ts'
import type { Result } from '../../../geometry/result.ts'
import {
  gapUnder,
  goesUnder,
  type Rest,
  restUnder,
  rockOf,
  type SteelLine,
  thickestLeafMm,
} from '../../../geometry/straightedge.ts'

/** Where leaves are tried, as shares of the half width, left to right. */
export const TRIED = [-1, -0.5, 0, 0.5, 1] as const

/** Rocks less than this between its corners and nobody feels it (mm at a corner). */
const FELT_MM = 0.002

/** How a straightedge lies on the edge of a moment, and what leaves find under it. */
export interface StraightedgeReading {
  readonly rest: Rest
  /** Whether a hand feels it rock. */
  readonly rocks: boolean
  /** At the places tried (mm). */
  readonly gapsMm: readonly number[]
  /** Of the set, the thickest that goes under at each of them; 0: none. */
  readonly leavesMm: readonly number[]
  /** Whether the leaf in hand goes under where it is tried, and how wide the gap is there. */
  readonly goesUnder: boolean
  readonly gapMm: number
  /** What these leaves show at the bench. */
  readonly shown: Result<MeasuredEdge>
}

/** How the straightedge is held and the leaves are tried. */
export interface Holding {
  readonly press: number
  readonly leafMm: number
  readonly leafShare: number
  /** From one leaf of the set to the next. */
  readonly stepMm: number
}

/** @returns what is found under a straightedge on this edge */
export const readStraightedge = (edge: SteelLine, holding: Holding): StraightedgeReading => {
  const widthMm = (edge.atMm[edge.atMm.length - 1] as number) - (edge.atMm[0] as number)
  const rest = restUnder(edge, holding.press)
  const { first, last } = rockOf(edge)
  const gapAt = (share: number): number => gapUnder(edge, rest, (share * widthMm) / 2)
  const gapsMm = TRIED.map(gapAt)
  const leavesMm = gapsMm.map((gapMm) => thickestLeafMm(gapMm, holding.stepMm))
  const [cornerLeftMm, halfwayLeftMm, , halfwayRightMm, cornerRightMm] = leavesMm as [
    number,
    number,
    number,
    number,
    number,
  ]
  const gapMm = gapAt(holding.leafShare)
  return {
    rest,
    rocks: (last - first) * widthMm > FELT_MM,
    gapsMm,
    leavesMm,
    goesUnder: goesUnder(gapMm, holding.leafMm),
    gapMm,
    shown: readLeaves({
      widthMm,
      cornerLeftMm,
      cornerRightMm,
      halfwayLeftMm,
      halfwayRightMm,
      stepMm: holding.stepMm,
    }),
  }
}

/** @returns the gap at the far corner, rocked onto one: +1 onto the right */
const farGapeMm = (edge: SteelLine, side: -1 | 1): number =>
  gapUnder(edge, restUnder(edge, side), -side * (edge.atMm[edge.atMm.length - 1] as number))

/** @returns the wider of what gapes at the corners, rocked each way (mm) */
export const widestGapeMm = (edge: SteelLine): number => Math.max(farGapeMm(edge, -1), farGapeMm(edge, 1))

/** How many times the relief the corner gapes that a rocked straightedge leaves open; null: there is no relief to speak of. */
export const timesRelief = (edge: SteelLine, side: -1 | 1): number | null => {
  const half = edge.atMm[edge.atMm.length - 1] as number
  const reliefMm = gapUnder(edge, restUnder(edge, 0), half)
  return reliefMm < FELT_MM ? null : farGapeMm(edge, side) / reliefMm
}
