/** Where the back is drawn: places on it go u across from the middle, + right, and v up from where the edge was. */
export interface BackPlot {
  readonly leftMm: number
  readonly edgeYPx: number
  readonly pxPerMm: number
  /** Where the blade is broken off. */
  readonly topPx: number
  readonly plotPx: number
}

export const backX = ({ leftMm, pxPerMm }: BackPlot, uMm: number): number => (uMm - leftMm) * pxPerMm
export const backY = ({ edgeYPx, pxPerMm }: BackPlot, vMm: number): number => edgeYPx - vMm * pxPerMm

/** How the blade stands to the wheel. */
interface Turned {
  readonly yawRad: number
  readonly traverseMm: number
}

/** What it turns about, on the blade. */
interface Pivot {
  readonly pivotUMm: number
  readonly pivotVMm: number
}

/** A line across the back, filled anew: u and v of its left end, then of its right one. */
export type BackLine = Float64Array

/**
 * Fills in the line along which the rim touches the back's plane, seen from the blade: as long as the wheel is wide, turned
 * by the yaw, shifted by the traverse, and as far up the blade as the edge lets it come.
 * @param vMm a field whose every `throughCount`-th place is the edge, from left to right
 */
export const fillWheelLine = (
  out: BackLine,
  { uMm, throughCount }: { readonly uMm: ArrayLike<number>; readonly throughCount: number },
  vMm: ArrayLike<number>,
  wheelWidthMm: number,
  { pivotUMm, pivotVMm }: Pivot,
  { yawRad, traverseMm }: Turned,
): void => {
  const sine = Math.sin(yawRad)
  const cosine = Math.cos(yawRad)
  const slope = sine / cosine
  let vAtMiddle = Number.POSITIVE_INFINITY
  for (let i = 0; i < uMm.length; i++)
    vAtMiddle = Math.min(vAtMiddle, (vMm[i * throughCount] as number) - slope * (uMm[i] as number))
  // Along the wheel's axis a place of the blade stands at x = traverse + pivotU + cosine (u - pivotU) + sine (v - pivotV).
  const middle = -traverseMm - pivotUMm + cosine * pivotUMm - sine * (vAtMiddle - pivotVMm)
  for (let end = 0; end < 2; end++) {
    const u = (middle + (end - 0.5) * wheelWidthMm) / (cosine + sine * slope)
    out[2 * end] = u
    out[2 * end + 1] = vAtMiddle + slope * u
  }
}

/**
 * Free way left between guide and stop; 0 where the stop bears.
 * @param stopMm free play on that side @param side -1 left, 1 right
 */
export const freeWayMm = (stopMm: number, side: -1 | 1, guideArmMm: number, yawRad: number): number =>
  Math.max(0, stopMm - side * guideArmMm * Math.tan(yawRad))
