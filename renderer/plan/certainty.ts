import { predictedReliefMm } from '../../geometry/expectedLeaves.ts'
import type { Report } from '../../geometry/report.ts'

/** How sure the answer is: one standard deviation each, null where it is not known. */
export interface Certainty {
  readonly reliefMm: number | null
  readonly freePlayMm: number | null
  readonly bevelDeg: number | null
  /** Edge gone back in the middle, and how sure. */
  readonly setBackMm: number
  readonly setBackErrorMm: number
}

const meanOf = (left: number | null, right: number | null): number | null =>
  left === null || right === null ? null : (left + right) / 2

/** @returns the relief's standard deviation: by the fixture's history where there is one, else by the job's tolerances */
const reliefError = ({ learnt, uncertainty }: Report): number | null =>
  learnt?.standardErrorMm ?? meanOf(uncertainty.reliefLeftMm, uncertainty.reliefRightMm)

/** An error passes on in proportion only while it is small beside the relief itself; from half of it on, nothing is told. */
const MOST_SHARE = 0.5

/**
 * The relief is nearly proportional to the free play, so an error of one is as great a share of the other.
 * @param freePlayMm of the answer; how sure it is stays unknown while the job as it stands leaves hardly any relief
 */
export const certaintyOf = (report: Report, freePlayMm: number | null): Certainty => {
  const { grind, job, uncertainty } = report
  const leftMm = predictedReliefMm(report)
  const reliefMm = reliefError(report)
  const share = reliefMm === null || reliefMm >= MOST_SHARE * leftMm ? null : reliefMm / leftMm
  const setBackMm = grind.edgeVMm.reduce((a, b) => Math.min(a, b))
  return {
    reliefMm,
    freePlayMm: share === null || freePlayMm === null ? null : share * freePlayMm,
    bevelDeg: uncertainty.bevelAngleDeg,
    setBackMm,
    setBackErrorMm: setBackMm * job.tolerances.removalShare,
  }
}
