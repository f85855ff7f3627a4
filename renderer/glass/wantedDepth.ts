/** @returns how far the wanted edge lies behind its middle at u, an arc of a circle (mm) */
export const wantedDepthMm = (edgeRadiusMm: number | null, uMm: number): number =>
  edgeRadiusMm === null ? 0 : edgeRadiusMm - Math.sqrt(edgeRadiusMm * edgeRadiusMm - uMm * uMm)
