import { seatSine } from './aim.ts'
import type { Job } from './job.ts'
import type { EdgeReport, WoodViewReport } from './report.ts'
import { degFromRad } from './units.ts'

/** Width and area of the shaving between two neighbouring points of the edge, thickness straight between them. */
const slice = (stepMm: number, a: number, b: number): readonly [widthMm: number, areaMm2: number] => {
  if (a >= 0 && b >= 0) return [stepMm, (stepMm * (a + b)) / 2]
  const top = Math.max(a, b)
  if (top <= 0) return [0, 0]
  const cutMm = (stepMm * top) / Math.abs(a - b)
  return [cutMm, (cutMm * top) / 2]
}

/**
 * The edge as the wood meets it, set so that its thickest shaving is the depth wanted. The edge lies in the plane of the
 * back whichever side the bevel is, so every height is seen through the sine of the seat angle.
 * @returns null for a tool without a seat
 */
export const woodViewOf = (job: Job, edge: EdgeReport, bevelRad: number): WoodViewReport | null => {
  const sine = seatSine(job)
  const { seatAngleDeg, bevelSide } = job.blade
  if (sine === null || seatAngleDeg === null) return null
  const depthMm = job.aim.shavingDepthMm
  const foremostMm = edge.edgeVMm.reduce((a, b) => Math.min(a, b))
  const thickness = edge.edgeVMm.map((v) => depthMm - (v - foremostMm) * sine)
  let shavingWidthMm = 0
  let shavingAreaMm2 = 0
  for (let i = 1; i < thickness.length; i++) {
    const stepMm = (edge.edgeUMm[i] as number) - (edge.edgeUMm[i - 1] as number)
    const [widthMm, areaMm2] = slice(stepMm, thickness[i - 1] as number, thickness[i] as number)
    shavingWidthMm += widthMm
    shavingAreaMm2 += areaMm2
  }
  const bevelDeg = degFromRad(bevelRad)
  return {
    pitchDeg: bevelSide === 'down' ? seatAngleDeg : seatAngleDeg + bevelDeg,
    clearanceDeg: bevelSide === 'down' ? seatAngleDeg - bevelDeg : seatAngleDeg,
    woodReliefMm: ((edge.reliefLeftMm + edge.reliefRightMm) / 2) * sine,
    shavingWidthMm,
    shavingThicknessMaxMm: depthMm,
    shavingAreaMm2,
  }
}
