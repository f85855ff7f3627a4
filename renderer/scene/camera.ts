import type { PerspectiveCamera, Vector3 } from 'three'
import { radFromDeg } from '../../geometry/units.ts'
import type { MachineFigures } from './placement.ts'

/** From the operator's left, a little above the bar. */
const AZIMUTH_RAD = radFromDeg(-34)
const HEIGHT_RAD = radFromDeg(10)
/** Lens, degrees from top to bottom. */
export const LENS_DEG = 30
/** Share of the view's height that the machine fills, and of its width: labels stand outside. */
const FILL_HEIGHT = 0.94
const FILL_WIDTH = 0.5

/** What has to be in the picture, in the scene (mm). */
export interface Subject {
  readonly lowMm: number
  readonly highMm: number
  readonly halfWidthMm: number
}

/** From a hand below the edge to the top of the blade or its guide; lifted, from the guide to the edge high up. */
export const subjectOf = (
  { barDistanceMm, projectionMm, pivotVMm }: MachineFigures,
  armMm: number,
  wheelRadiusMm: number,
  halfWidthMm: number,
  lifted: boolean,
): Subject => {
  const aboveMm = Math.max(pivotVMm - projectionMm + armMm + 16, 40)
  return lifted
    ? { lowMm: barDistanceMm - 0.86 * aboveMm - 20, highMm: barDistanceMm + 0.9 * projectionMm + 18, halfWidthMm }
    : { lowMm: wheelRadiusMm * 0.52, highMm: barDistanceMm + 0.9 * aboveMm, halfWidthMm }
}

/** Puts camera and target where the subject fills the view from the operator's left. */
export const aimCamera = (camera: PerspectiveCamera, target: Vector3, subject: Subject, aspect: number): void => {
  const { lowMm, highMm, halfWidthMm } = subject
  const tangent = Math.tan((LENS_DEG * Math.PI) / 360)
  const forHeight = (highMm - lowMm) / 2 / (tangent * FILL_HEIGHT)
  const forWidth = halfWidthMm / (tangent * aspect * FILL_WIDTH)
  const awayMm = Math.max(forHeight, forWidth)
  target.set(0, (lowMm + highMm) / 2, 20)
  camera.position.set(
    target.x + awayMm * Math.cos(HEIGHT_RAD) * Math.sin(AZIMUTH_RAD),
    target.y + awayMm * Math.sin(HEIGHT_RAD),
    target.z + awayMm * Math.cos(HEIGHT_RAD) * Math.cos(AZIMUTH_RAD),
  )
  camera.lookAt(target)
}
