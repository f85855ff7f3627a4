import type { Scales } from './balance.ts'
import { type Bed, coverage } from './contact.ts'

/**
 * Preston's law (1927): the surface recedes along the wheel's normal by K p in a step, K = volume of the step / load. A plain
 * step overshoots where K x stiffness > 1; the pressure after the step, p = stiffness (depth - K p), is taken instead, so
 * the bed is pressed as if it were softer. Stable for any step, and the volume removed is K x load exactly.
 */
export const effectiveStiffness = (stiffnessNPerMm3: number, removalPerNewtonMm3: number): number =>
  stiffnessNPerMm3 / (1 + removalPerNewtonMm3 * stiffnessNPerMm3)

/**
 * Takes one step's steel off the field at a balanced pose and notes the pressure across the edge.
 *
 * A patch du dn recedes along v by K p rho / (d cos yaw), its share of the column that the wheel covers.
 * The sums of the balance share the step's volume out, so that it is taken to the last bit but rounding.
 * @param scales as the balance left them
 * @param stiffness the effective one that the pose was balanced with
 * @param pressureNPerMm filled: force on each column per mm of width
 * @returns volume removed, mm^3
 */
export const wear = (
  bed: Bed,
  vMm: Float64Array,
  { placed, clearance, sums }: Scales,
  stiffness: number,
  removalMm3: number,
  pressureNPerMm: Float64Array,
): number => {
  const { acrossCount, throughCount, uMm, nMm, columnEdgesMm, rowHeightsMm, wheelRadiusMm: R } = bed
  const { yawSine, yawCosine, secant, axisNMm, fixedMm } = placed
  const perDepth = stiffness * secant
  const perNewton = removalMm3 / sums.force
  let force = 0
  for (let i = 0; i < acrossCount; i++) {
    pressureNPerMm[i] = 0
    if ((clearance.columnMm[i] as number) > 0) continue
    const columnD = fixedMm - (uMm[i] as number) * yawSine
    let perMm = 0
    for (let j = 0, at = i * throughCount; j < throughCount; j++, at++) {
      const v = vMm[at] as number
      const d = columnD + v * yawCosine
      const h = (nMm[j] as number) - axisNMm
      const rhoSquare = d * d + h * h
      if (rhoSquare >= R * R) continue
      const rho = Math.sqrt(rhoSquare)
      const perPatch = (coverage(bed, placed, i, v) * perDepth * (R - rho) * rho) / d
      const worn = v + perNewton * perPatch
      vMm[at] = worn
      if (worn > clearance.mostVMm) clearance.mostVMm = worn
      perMm += perPatch * (rowHeightsMm[j] as number)
    }
    pressureNPerMm[i] = perMm
    force += perMm * ((columnEdgesMm[i + 1] as number) - (columnEdgesMm[i] as number))
  }
  return force * perNewton
}
