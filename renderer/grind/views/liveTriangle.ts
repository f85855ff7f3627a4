import type { SetUp } from '../../../geometry/setUp.ts'
import type { SteelLine } from '../../../geometry/straightedge.ts'
import {
  barAxisMm,
  type MachineFigures,
  placeBase,
  placeBladeOnBase,
  type StanceMm,
  under,
} from '../../scene/placement.ts'
import { type Point, type Triangle, triangleOf } from '../../setUp/triangle.ts'

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
  const base = new Float64Array(16)
  const blade = new Float64Array(16)
  placeBase(figures, stance, base)
  placeBladeOnBase(figures, stance.yawRad, blade)
  const onBlade = (vMm: number, nMm: number): Point => {
    const [, y, z] = under(base, ...under(blade, uMm, vMm, -nMm))
    return [z, y]
  }
  const [barY, barZ] = barAxisMm(figures)
  return { ...triangleOf(setUp, figures.barOffsetMm), bar: [barZ, barY], edge: onBlade(edgeVMm, 0), onBlade }
}

/** @param bevel heights from the back with where the steel begins @returns its places in the drawing's plane, from edge to heel */
export const bevelPoints = ({ onBlade }: Triangle, { atMm, backMm }: SteelLine): readonly Point[] =>
  Array.from(atMm, (n, j) => onBlade(backMm[j] as number, n))
