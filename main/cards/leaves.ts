import type { Report } from '../../geometry/report.ts'
import type { CardFacts, Pair } from './facts.ts'

/** How far the edge lies behind its foremost point, where the leaves are tried. */
export interface Leaves {
  readonly halfway: Pair<number>
  readonly corner: Pair<number>
}

/** Below this relief (mm) an edge is judged by a straightedge against the light: no leaf is so thin. */
const STRAIGHT_MM = 0.005

/** Whether a straight edge is wanted. */
export const isStraight = ({ plan }: Report): boolean => plan.reliefMm < STRAIGHT_MM

/** v of a line of equal steps at a share of the width, straight between its points. */
const valueAt = (vMm: readonly number[], share: number): number => {
  const place = share * (vMm.length - 1)
  const before = Math.min(Math.floor(place), vMm.length - 2)
  const [low, high] = [vMm[before] as number, vMm[before + 1] as number]
  return low + (high - low) * (place - before)
}

const leavesOfLine = (vMm: readonly number[]): Leaves => {
  const foremostMm = Math.min(...vMm)
  const behind = (share: number) => valueAt(vMm, share) - foremostMm
  return { halfway: { left: behind(0.25), right: behind(0.75) }, corner: { left: behind(0), right: behind(1) } }
}

/** On an arc as flat as an edge's, the leaf halfway out is a quarter of the leaf at the corner. */
const HALFWAY_OF_ARC = 0.25

const leavesOfArc = (reliefMm: number): Leaves => ({
  halfway: { left: reliefMm * HALFWAY_OF_ARC, right: reliefMm * HALFWAY_OF_ARC },
  corner: { left: reliefMm, right: reliefMm },
})

/**
 * Leaves to expect: of the edge that the grind leaves when reshaping; when freshening, of the edge that is there, which
 * is to stay, or of the arc aimed at where it was not measured.
 */
export const leavesOf = ({ job, report }: CardFacts): Leaves => {
  if (job.aim.task === 'reshape') return leavesOfLine(report.grind.edgeVMm)
  return job.blade.startEdge === null ? leavesOfArc(report.plan.reliefMm) : leavesOfLine(job.blade.startEdge)
}
