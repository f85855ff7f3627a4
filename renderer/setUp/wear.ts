import type { Job } from '../../geometry/job.ts'
import type { SetUpReport } from '../../geometry/report.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { degFromRad } from '../../geometry/units.ts'

/** What another diameter of the wheel does. Null: the triangle does not close. */
export interface AfterWear {
  /** Bevel with the bar left where it is, and with the bar set to its old gap. */
  readonly leftDeg: number | null
  readonly sameGapDeg: number | null
  /** For the old bevel at the old projection: how far the bar moves from where it is, + away from the wheel, and its gap then. */
  readonly barMovesMm: number | null
  readonly gapMm: number | null
  /** For the old bevel with the bar left: how much more projection. */
  readonly projectionMovesMm: number | null
}

const solved = (job: Job, wheelDiameterMm: number, aim: Partial<Job['aim']>) =>
  setUpOf({ ...job, station: { ...job.station, wheelDiameterMm }, aim: { ...job.aim, ...aim } })

/** @param figures of the job as it stands */
export const afterWear = (job: Job, figures: SetUpReport, wheelDiameterMm: number): AfterWear => {
  const { projectionMm, barDistanceMm, bevelAngleDeg, gapMm } = figures
  const bothRadiiMm = (wheelDiameterMm + job.station.barDiameterMm) / 2
  const bevelWith = (barMm: number): number | null => {
    const setUp = solved(job, wheelDiameterMm, { bevelAngleDeg: null, projectionMm, barDistanceMm: barMm })
    return setUp.ok ? degFromRad(setUp.value.bevelRad) : null
  }
  const moved = solved(job, wheelDiameterMm, { bevelAngleDeg, projectionMm, barDistanceMm: null })
  const shifted = solved(job, wheelDiameterMm, { bevelAngleDeg, projectionMm: null, barDistanceMm })
  return {
    leftDeg: bevelWith(barDistanceMm),
    sameGapDeg: bevelWith(bothRadiiMm + gapMm),
    barMovesMm: moved.ok ? moved.value.barDistanceMm - barDistanceMm : null,
    gapMm: moved.ok ? moved.value.barDistanceMm - bothRadiiMm : null,
    projectionMovesMm: shifted.ok ? shifted.value.projectionMm - projectionMm : null,
  }
}
