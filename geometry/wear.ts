import type { Scales } from './balance.ts'
import type { Bed } from './pose.ts'
import { wearRim } from './rim.ts'

/**
 * Preston's law (1927): the surface recedes along the wheel's normal by K p in a step, K = volume of the step / load. A plain
 * step overshoots where K x stiffness > 1; the pressure after the step, p = stiffness (depth - K p), is taken instead, so
 * the bed is pressed as if it were softer. Stable for any step, and the volume removed is K x load exactly.
 */
export const effectiveStiffness = (stiffnessNPerMm3: number, removalPerNewtonMm3: number): number =>
  stiffnessNPerMm3 / (1 + removalPerNewtonMm3 * stiffnessNPerMm3)

/**
 * Takes one step's steel off the field at a balanced pose: each patch recedes along v by its share of the force, as
 * `press` left it in `patchMm`. The volume is then right to rounding however closely the balance was met.
 *
 * @param scales as the balance left them
 * @param perNewtonMm volume for each newton, times the effective stiffness that the pose was balanced with
 * @returns volume removed, mm^3
 */
export const wear = (bed: Bed, vMm: Float64Array, { clearance, patchMm }: Scales, perPatch: number): number => {
  const { acrossCount, throughCount, columnEdgesMm, rowHeightsMm } = bed
  let volumeMm3 = 0
  let mostVMm = clearance.mostVMm
  for (let i = 0; i < acrossCount; i++) {
    let heightMm2 = 0
    const rows = clearance.rows[i] as number
    for (let j = 0, at = i * throughCount; j < rows; j++, at++) {
      const lossMm = perPatch * (patchMm[at] as number)
      const worn = (vMm[at] as number) + lossMm
      vMm[at] = worn
      if (worn > mostVMm) mostVMm = worn
      heightMm2 += lossMm * (rowHeightsMm[j] as number)
    }
    volumeMm3 += heightMm2 * ((columnEdgesMm[i + 1] as number) - (columnEdgesMm[i] as number))
  }
  clearance.mostVMm = mostVMm
  return volumeMm3
}

/** Force on each column per mm of width at the last balanced pose. @param newtonPerPatch stiffness that it was balanced with */
export const readPressure = (bed: Bed, { clearance, patchMm }: Scales, stiffness: number, into: Float64Array): void => {
  const { acrossCount, throughCount, rowHeightsMm } = bed
  for (let i = 0; i < acrossCount; i++) {
    into[i] = 0
    for (let j = 0; j < (clearance.rows[i] as number); j++)
      into[i] =
        (into[i] as number) + stiffness * (patchMm[i * throughCount + j] as number) * (rowHeightsMm[j] as number)
  }
}

/** Wears the wheel where it took steel, by the grinding ratio (steel per wheel, by volume; both are pressed by the same patches). */
export const wearWheel = (
  bed: Bed,
  { clearance, patchMm, placed }: Scales,
  perPatch: number,
  grindingRatio: number,
): void => {
  const { acrossCount, throughCount, uMm, columnEdgesMm, rowHeightsMm, rim } = bed
  const { x } = placed.forms
  for (let i = 0; i < acrossCount; i++) {
    let heightMm2 = 0
    for (let j = 0; j < (clearance.rows[i] as number); j++)
      heightMm2 += perPatch * (patchMm[i * throughCount + j] as number) * (rowHeightsMm[j] as number)
    const volumeMm3 = heightMm2 * ((columnEdgesMm[i + 1] as number) - (columnEdgesMm[i] as number))
    if (volumeMm3 > 0) wearRim(rim, x.atZero + x.perU * (uMm[i] as number), volumeMm3 / grindingRatio)
  }
}
