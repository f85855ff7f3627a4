import { BARS_PX, lineOf, type Place } from '../../glass/glassLayout.ts'
import { ACROSS, DEPTH, factorFor, PX_PER_MM } from '../../ui/scale.ts'
import type { AcrossLine, BesideLine, EdgeLines } from './edgeLines.ts'

const CURVE_PX = 260
const TOP_PX = 16
const BODY_PX = 60
const MARGIN_PX = 24
/** A straight edge is still drawn in some depth (mm). */
const LEAST_DEPTH_MM = 0.02

const widthOf = ({ uMm }: AcrossLine): number => (uMm.at(-1) as number) - (uMm[0] as number)

/** @returns an edge and what lies beside it as SVG paths, the edge up, in a room this wide */
export const edgeLayout = ({ edge, others }: EdgeLines, roomPx: number) => {
  const lines: readonly AcrossLine[] = [edge, ...others]
  const highestMm = -Math.min(0, ...lines.flatMap(({ behindMm }) => behindMm))
  const deepestMm = Math.max(LEAST_DEPTH_MM, ...lines.flatMap(({ behindMm }) => behindMm))
  const across = factorFor(ACROSS, Math.max(...lines.map(widthOf)), roomPx - BARS_PX - MARGIN_PX)
  const depth = factorFor(DEPTH, highestMm + deepestMm, CURVE_PX)
  const middlePx = (roomPx - BARS_PX) / 2
  const place = (uMm: number, behindMm: number): Place => [
    middlePx + uMm * across * PX_PER_MM,
    TOP_PX + (highestMm + behindMm) * depth * PX_PER_MM,
  ]
  const pathOf = ({ uMm, behindMm }: AcrossLine): string => lineOf(uMm.map((u, k) => place(u, behindMm[k] as number)))
  const floorPx = place(0, deepestMm)[1] + BODY_PX
  const drawn = pathOf(edge)
  return {
    across,
    depth,
    heightPx: floorPx,
    edge: drawn,
    body: `${drawn}V${floorPx}H${place(edge.uMm[0] as number, 0)[0].toFixed(1)}Z`,
    others: others.map((line: BesideLine) => ({ kind: line.kind, d: pathOf(line) })),
    bar: { xPx: roomPx - BARS_PX + 8, yPx: TOP_PX, mostPx: CURVE_PX / 2 },
  }
}
