import { meanReliefMm } from './edge.ts'
import { ARC_RATIO } from './measure.ts'
import type { Report } from './report.ts'

/** How far the edge lies behind its foremost point, where leaves are tried: at the corners and halfway out. */
export interface ExpectedLeaves {
  readonly halfway: { readonly left: number; readonly right: number }
  readonly corner: { readonly left: number; readonly right: number }
}

/** v of a line of equal steps at a share of the width, straight between its points. */
const valueAt = (vMm: readonly number[], share: number): number => {
  const place = share * (vMm.length - 1)
  const before = Math.min(Math.floor(place), vMm.length - 2)
  const [low, high] = [vMm[before] as number, vMm[before + 1] as number]
  return low + (high - low) * (place - before)
}

const leavesOfLine = (vMm: readonly number[]): ExpectedLeaves => {
  const foremostMm = Math.min(...vMm)
  const behind = (share: number) => valueAt(vMm, share) - foremostMm
  return { halfway: { left: behind(0.25), right: behind(0.75) }, corner: { left: behind(0), right: behind(1) } }
}

const leavesOfArc = (reliefMm: number): ExpectedLeaves => ({
  halfway: { left: reliefMm * ARC_RATIO, right: reliefMm * ARC_RATIO },
  corner: { left: reliefMm, right: reliefMm },
})

/** Relief that this grind should leave: by the fixture's history where it has one, else by the model. */
export const predictedReliefMm = ({ learnt, grind }: Report): number => learnt?.reliefMm ?? meanReliefMm(grind)

/** How many times the model's relief the fixture's history says; 1 without one. */
const learntShare = ({ learnt, grind }: Report): number => {
  const modelMm = meanReliefMm(grind)
  return learnt === null || modelMm <= 0 ? 1 : learnt.reliefMm / modelMm
}

const scaled = ({ halfway, corner }: ExpectedLeaves, share: number): ExpectedLeaves => ({
  halfway: { left: halfway.left * share, right: halfway.right * share },
  corner: { left: corner.left * share, right: corner.right * share },
})

/**
 * Leaves to expect in mm: of the edge that the grind leaves when reshaping, as the fixture's history corrects it; when freshening, of the edge that is there,
 * which is to stay, or of the arc aimed at where it was not measured.
 */
export const expectedLeaves = (report: Report): ExpectedLeaves => {
  const { job, plan, grind } = report
  if (job.aim.task === 'reshape') return scaled(leavesOfLine(grind.edgeVMm), learntShare(report))
  return job.blade.startEdge === null ? leavesOfArc(plan.reliefMm) : leavesOfLine(job.blade.startEdge)
}

/** Sides that differ by less than this (mm) are told as one figure, their mean: no leaf tells them apart. */
const ALIKE_MM = 0.02

/** Whether no leaf tells left from right. */
export const leavesAlike = ({ left, right }: { readonly left: number; readonly right: number }): boolean =>
  Math.abs(left - right) < ALIKE_MM
