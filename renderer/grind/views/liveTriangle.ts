import type { SetUp } from '../../../geometry/setUp.ts'
import { barAxisMm, type MachineFigures, placeBase, placeBladeOnBase, type StanceMm } from '../../scene/placement.ts'
import { type Point, type Triangle, triangleOf } from '../../setUp/triangle.ts'

/** Where places of the blade stand in the section's plane at a moment: v up the blade, n from the back towards the bevel. */
export interface BladeAt {
  /** @param uMm where across the section is cut */
  set(stance: StanceMm, uMm: number): void
  xMm(vMm: number, nMm: number): number
  yMm(vMm: number, nMm: number): number
}

/** One for all moments: nothing is made when it is set anew. */
export const bladeAt = (figures: MachineFigures): BladeAt => {
  const base = new Float64Array(16)
  const blade = new Float64Array(16)
  // From a place (u, v, n) to the scene's Z and Y: where they start, and what a millimetre of v and of n adds.
  const [z, y] = [new Float64Array(3), new Float64Array(3)]
  const fill = (out: Float64Array, row: number, uMm: number): void => {
    out[0] = (base[row + 12] as number) + across(row, 0) * uMm + across(row, 12)
    out[1] = across(row, 4)
    out[2] = -across(row, 8)
  }
  const across = (row: number, column: number): number =>
    (base[row] as number) * (blade[column] as number) +
    (base[row + 4] as number) * (blade[column + 1] as number) +
    (base[row + 8] as number) * (blade[column + 2] as number)
  const at = (out: Float64Array, vMm: number, nMm: number): number =>
    (out[0] as number) + (out[1] as number) * vMm + (out[2] as number) * nMm
  return {
    set: (stance, uMm) => {
      placeBase(figures, stance, base)
      placeBladeOnBase(figures, stance.yawRad, blade)
      fill(z, 2, uMm)
      fill(y, 1, uMm)
    },
    xMm: (vMm, nMm) => at(z, vMm, nMm),
    yMm: (vMm, nMm) => at(y, vMm, nMm),
  }
}

/**
 * The triangle of a moment, seen along the axles from the operator's left, operator to the right: the blade where tilt, yaw
 * and traverse hold it, at a place across.
 * @param edgeVMm how far the edge there has been ground back
 */
export const liveTriangle = (
  setUp: SetUp,
  figures: MachineFigures,
  stance: StanceMm,
  uMm: number,
  edgeVMm: number,
): Triangle => {
  const blade = bladeAt(figures)
  blade.set(stance, uMm)
  const onBlade = (vMm: number, nMm: number): Point => [blade.xMm(vMm, nMm), blade.yMm(vMm, nMm)]
  const [barY, barZ] = barAxisMm(figures)
  return { ...triangleOf(setUp, figures.barOffsetMm), bar: [barZ, barY], edge: onBlade(edgeVMm, 0), onBlade }
}
