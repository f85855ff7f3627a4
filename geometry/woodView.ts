import { seatSine } from './aim.ts'
import { meanReliefMm } from './edge.ts'
import type { Job } from './job.ts'
import { anglesInUse } from './plane.ts'
import { profileOf } from './profile.ts'
import type { EdgeReport, WoodViewReport } from './report.ts'
import { cutOf } from './shaving.ts'
import { degFromRad } from './units.ts'

/**
 * The edge as the wood meets it, set so that its thickest shaving is the depth wanted. The edge lies in the plane of the
 * back whichever side the bevel is, so every height is seen through the sine of the seat angle.
 * @returns null for a tool without a seat
 */
export const woodViewOf = (job: Job, edge: EdgeReport, bevelRad: number): WoodViewReport | null => {
  const sine = seatSine(job)
  const { seatAngleDeg, bevelSide } = job.blade
  if (sine === null || seatAngleDeg === null) return null
  const { shavingDepthMm } = job.aim
  const cut = cutOf(profileOf(edge.edgeUMm, edge.edgeVMm), shavingDepthMm, sine)
  return {
    ...anglesInUse({ seatAngleDeg, bevelSide, honedDeg: degFromRad(bevelRad), backBevelDeg: 0 }),
    woodReliefMm: meanReliefMm(edge) * sine,
    shavingWidthMm: cut.widthMm,
    shavingThicknessMaxMm: shavingDepthMm,
    shavingAreaMm2: cut.areaMm2,
  }
}
