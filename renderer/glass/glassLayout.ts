import { ACROSS, DEPTH, factorFor, PX_PER_MM } from '../ui/scale.ts'
import { wantedDepthMm } from './wantedDepth.ts'

/** A place in a magnified drawing (px). */
export type Place = readonly [xPx: number, yPx: number]

/** A place measured: from the leaf that passes to the next, which does not. */
export interface Mark {
  readonly uMm: number
  readonly leastMm: number
  readonly mostMm: number
}

/** An edge as measured. */
export interface MeasuredCurve {
  readonly marks: readonly Mark[]
  /** u and depth of the curve through them; null where they do not show one. */
  readonly line: readonly (readonly [uMm: number, depthMm: number])[] | null
  /** The line is an arc because nothing else is known. */
  readonly taken: boolean
}

/** The edges that a glass shows, all of one iron. */
export interface GlassEdges {
  readonly widthMm: number
  readonly wanted: { readonly reliefMm: number; readonly edgeRadiusMm: number | null }
  readonly predicted: { readonly edgeUMm: readonly number[]; readonly edgeVMm: readonly number[] } | null
  readonly measured: MeasuredCurve | null
}

/** The glass laid out: its factors, its curves, and where its parts stand. */
export interface GlassLayout {
  readonly across: number
  readonly depth: number
  readonly heightPx: number
  readonly floorPx: number
  readonly leftPx: number
  readonly rightPx: number
  readonly topPx: number
  readonly wanted: readonly Place[]
  readonly predicted: readonly Place[]
  /** Where the wanted edge is measured: corners, halfway, middle. */
  readonly diamonds: readonly Place[]
  readonly measured: readonly Place[]
  /** Measured places, each with the depth that its whisker goes to. */
  readonly squares: readonly { readonly at: Place; readonly toPx: number }[]
}

const TOP_PX = 16
/** Room below the deepest point of the curve, and below the iron for the names of the sides (px). */
const BODY_PX = 48
const NAMES_PX = 24
/** Room at the right for the scale bar (px). */
export const BARS_PX = 72
const MARGIN_PX = 24
/** Points on the curve: smooth at any size it is drawn in. */
const POINTS = 60
/** A straight edge is still drawn in some depth (mm). */
const LEAST_DEPTH_MM = 0.02

/** @returns where a drawing beside a glass ends, under a curve of this height (px) */
export const floorPxOf = (curvePx: number): number => TOP_PX + curvePx + BODY_PX - NAMES_PX

/** @returns equal steps from -1 to 1, both included */
export const steps = (count: number): readonly number[] =>
  Array.from({ length: count + 1 }, (_, k) => (2 * k) / count - 1)

/** Depth counted from the foremost point. */
const depthsOf = (edgeVMm: readonly number[]): readonly number[] => {
  const foremost = Math.min(...edgeVMm)
  return edgeVMm.map((v) => v - foremost)
}

/** @returns the layout of the edges in a room; depth is counted from the foremost point of each */
export const glassLayout = (
  { widthMm, wanted, predicted, measured }: GlassEdges,
  roomPx: number,
  curvePx: number,
): GlassLayout => {
  const half = widthMm / 2
  const depthsMm = depthsOf(predicted?.edgeVMm ?? [])
  const marks = measured?.marks ?? []
  const deepestMm = Math.max(wanted.reliefMm, ...depthsMm, ...marks.map(({ mostMm }) => mostMm), LEAST_DEPTH_MM)
  const across = factorFor(ACROSS, widthMm, roomPx - BARS_PX - MARGIN_PX)
  const depth = factorFor(DEPTH, deepestMm, curvePx)
  const middle = (roomPx - BARS_PX) / 2
  const yPx = (depthMm: number): number => TOP_PX + depthMm * depth * PX_PER_MM
  const place = (uMm: number, depthMm: number): Place => [middle + uMm * across * PX_PER_MM, yPx(depthMm)]
  const wantedAt = (share: number): Place => place(share * half, wantedDepthMm(wanted.edgeRadiusMm, share * half))
  return {
    across,
    depth,
    heightPx: floorPxOf(curvePx) + NAMES_PX,
    topPx: TOP_PX,
    floorPx: floorPxOf(curvePx),
    leftPx: place(-half, 0)[0],
    rightPx: place(half, 0)[0],
    wanted: steps(POINTS).map(wantedAt),
    predicted: (predicted?.edgeUMm ?? []).map((u, k) => place(u, depthsMm[k] ?? 0)),
    diamonds: steps(4).map(wantedAt),
    measured: (measured?.line ?? []).map(([u, depthMm]) => place(u, depthMm)),
    squares: marks.map(({ uMm, leastMm, mostMm }) => ({ at: place(uMm, leastMm), toPx: yPx(mostMm) })),
  }
}

/** @returns an SVG path through places */
export const lineOf = (places: readonly Place[]): string =>
  `M${places.map((each) => each.map((px) => px.toFixed(1)).join(' ')).join('L')}`
