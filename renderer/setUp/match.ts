import { hollowOf } from '../../geometry/hollow.ts'
import type { Job } from '../../geometry/job.ts'
import type { SetUpReport } from '../../geometry/report.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import { radFromDeg } from '../../geometry/units.ts'

/** What to move for the wheel to meet the bevel that is there in its middle: one or the other. Null: that alone does not do it. */
export interface Match {
  /** More projection, the bar left (mm). */
  readonly projectionMovesMm: number | null
  /** The bar further from the axle, the projection left (mm). */
  readonly barMovesMm: number | null
}

/** The chord follows the tip almost degree for degree: each pass leaves less than a twentieth of what was off. */
const PASSES = 8

/** Bevel at the tip of the hollow whose chord is as steep as a flat bevel. */
const tipForChordDeg = ({ station, blade }: Job, chordDeg: number): number => {
  const chordAt = (tipDeg: number) =>
    hollowOf(station.wheelDiameterMm / 2, radFromDeg(tipDeg), blade.thicknessMm).chordAngleDeg
  let tipDeg = chordDeg
  for (let pass = 0; pass < PASSES; pass += 1) tipDeg += chordDeg - chordAt(tipDeg)
  return tipDeg
}

/**
 * Solved on the triangle rather than by its slopes: those are half a millimetre off where the bevels differ by 3 or 4 degrees.
 * @param figures of the job as it stands
 * @param currentBevelDeg the bevel that is there, as a flat stone finds it
 */
export const matchOf = (job: Job, figures: SetUpReport, currentBevelDeg: number): Match => {
  const { projectionMm, barDistanceMm } = figures
  const bevelAngleDeg = tipForChordDeg(job, currentBevelDeg)
  const solved = (aim: Partial<Job['aim']>) => setUpOf({ ...job, aim: { ...job.aim, bevelAngleDeg, ...aim } })
  const shifted = solved({ projectionMm: null, barDistanceMm })
  const moved = solved({ projectionMm, barDistanceMm: null })
  return {
    projectionMovesMm: shifted.ok ? shifted.value.projectionMm - projectionMm : null,
    barMovesMm: moved.ok ? moved.value.barDistanceMm - barDistanceMm : null,
  }
}
