/** A place on the back: u across from the middle, + right, v up from where the edge was. */
export type BackPoint = readonly [uMm: number, vMm: number]

/** How blade and fixture stand to each other. */
export interface Turned {
  readonly yawRad: number
  readonly traverseMm: number
  readonly pivotUMm: number
  readonly pivotVMm: number
}

/**
 * The line along which the rim touches the back's plane, seen from the blade: as long as the wheel is wide, turned by the
 * yaw, shifted by the traverse, and as far up the blade as the edge lets it come.
 * @param edgeVMm the edge from left to right
 */
export const wheelLine = (
  uMm: ArrayLike<number>,
  edgeVMm: (i: number) => number,
  wheelWidthMm: number,
  { yawRad, traverseMm, pivotUMm, pivotVMm }: Turned,
): readonly [left: BackPoint, right: BackPoint] => {
  const [sine, cosine] = [Math.sin(yawRad), Math.cos(yawRad)]
  const slope = sine / cosine
  let vAtMiddle = Number.POSITIVE_INFINITY
  for (let i = 0; i < uMm.length; i++) vAtMiddle = Math.min(vAtMiddle, edgeVMm(i) - slope * (uMm[i] as number))
  // Along the wheel's axis a place of the blade stands at x = traverse + pivotU + cosine (u - pivotU) + sine (v - pivotV).
  const end = (xMm: number): BackPoint => {
    const across = xMm - traverseMm - pivotUMm + cosine * pivotUMm - sine * (vAtMiddle - pivotVMm)
    const u = across / (cosine + sine * slope)
    return [u, vAtMiddle + slope * u]
  }
  return [end(-wheelWidthMm / 2), end(wheelWidthMm / 2)]
}

/** Free way left between guide and stop on each side; 0 where the stop bears. Never below 0 by more than rounding. */
export const freeWays = (
  { leftMm, rightMm }: { readonly leftMm: number; readonly rightMm: number },
  guideArmMm: number,
  yawRad: number,
): { readonly leftMm: number; readonly rightMm: number } => {
  const goneMm = guideArmMm * Math.tan(yawRad)
  return { leftMm: Math.max(0, leftMm + goneMm), rightMm: Math.max(0, rightMm - goneMm) }
}
