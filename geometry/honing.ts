import { cos, sin, tan } from './trigonometry.ts'

/** A hollow bevel and the angle it is honed at (radians). */
export interface Honing {
  readonly wheelRadiusMm: number
  readonly bevelRad: number
  readonly honedRad: number
}

/**
 * Width of the secondary bevel once honing has set the edge back by x: from the new edge along the stone to the hollow,
 * first root of t^2 + 2 p t + q = 0, p = x cos B - R sin(B - b), q = x^2 + 2 x R sin b. For a flat bevel (R without end)
 * x sin b / sin(B - b).
 * @returns null where the stone no longer leaves any hollow
 */
export const secondaryWidthMm = ({ wheelRadiusMm, bevelRad, honedRad }: Honing, setBackMm: number): number | null => {
  const p = setBackMm * cos(honedRad) - wheelRadiusMm * sin(honedRad - bevelRad)
  const q = setBackMm * setBackMm + 2 * setBackMm * wheelRadiusMm * sin(bevelRad)
  const under = p * p - q
  return under < 0 || p > 0 ? null : q / (Math.sqrt(under) - p)
}

/**
 * How far honing can set the edge back until the stone meets the heel and the hollow is gone: heel - thickness / tan B; not
 * above 0 where the honed angle is no more than the chord's.
 * @param heelMm along the back, from edge to heel
 */
export const hollowLastsMm = (heelMm: number, thicknessMm: number, honedRad: number): number =>
  heelMm - thicknessMm / tan(honedRad)

/** Honings until the hollow is gone, each setting the edge back by so much (> 0). */
export const honingsLeft = (lastsMm: number, setBackEachMm: number): number =>
  Math.max(0, Math.floor(lastsMm / setBackEachMm))
