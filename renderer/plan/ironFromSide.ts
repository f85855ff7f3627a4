import { radFromDeg } from '../../geometry/units.ts'

interface LyingIron {
  readonly seatAngleDeg: number
  readonly bevelSide: 'up' | 'down'
  readonly bevelDeg: number
}

/** Where a sketch has the edge, and how long and thick its iron is (px). */
interface SketchPx {
  readonly edgePx: readonly [xPx: number, yPx: number]
  readonly longPx: number
  readonly thickPx: number
}

/** @returns an iron lying in its plane, from the side, its angles true: its outline as an SVG path, and places along its back and off it towards the bevel's side (px) */
export const ironFromSide = (
  { seatAngleDeg, bevelSide, bevelDeg }: LyingIron,
  { edgePx, longPx, thickPx }: SketchPx,
) => {
  const [c, s] = [Math.cos(radFromDeg(seatAngleDeg)), Math.sin(radFromDeg(seatAngleDeg))]
  const up = bevelSide === 'up' ? 1 : -1
  const heelPx = thickPx / Math.tan(radFromDeg(bevelDeg))
  const at = (along: number, off: number): string =>
    `${(edgePx[0] + along * c - up * off * s).toFixed(1)} ${(edgePx[1] - along * s - up * off * c).toFixed(1)}`
  return { at, body: `M${[at(0, 0), at(longPx, 0), at(longPx, thickPx), at(heelPx, thickPx)].join('L')}Z` }
}

/** @returns where the figure of a seat's angle stands, beyond an arc about the edge and clear of the sole (px) */
export const seatFigurePlace = (
  seatAngleDeg: number,
  edgePx: readonly [xPx: number, yPx: number],
  outPx: number,
): readonly [xPx: number, yPx: number] => {
  const halfwayRad = radFromDeg(seatAngleDeg / 2)
  return [
    edgePx[0] + outPx * Math.cos(halfwayRad),
    Math.min(edgePx[1] - 6, edgePx[1] - outPx * Math.sin(halfwayRad) + 8),
  ]
}
