import type { Report } from '../../geometry/report.ts'
import { ACROSS, DEPTH, factorFor, PX_PER_MM } from '../ui/scale.ts'
import { wantedDepthMm } from './aim.ts'

/** A place in a magnified drawing (px). */
export type Place = readonly [xPx: number, yPx: number]

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
}

const TOP_PX = 16
/** Room below the deepest point of the curve, and below the iron for the names of the sides (px). */
const BODY_PX = 48
const NAMES_PX = 24
/** Room at the right for the scale bar (px). */
export const BARS_PX = 68
const MARGIN_PX = 24
/** Points on the curve: smooth at any size it is drawn in. */
const POINTS = 60
/** A straight edge is still drawn in some depth (mm). */
const LEAST_DEPTH_MM = 0.02

/** @returns where the drawings side by side on Plan end, under a curve of this height (px) */
export const floorPxOf = (curvePx: number): number => TOP_PX + curvePx + BODY_PX - NAMES_PX

const steps = (count: number): readonly number[] => Array.from({ length: count + 1 }, (_, k) => (2 * k) / count - 1)

/** @returns the layout of wanted and predicted edge in a room; depth is counted from the foremost point of each */
export const glassLayout = ({ plan, grind, job }: Report, roomPx: number, curvePx: number): GlassLayout => {
  const half = job.blade.widthMm / 2
  const foremost = Math.min(...grind.edgeVMm)
  const depthsMm = grind.edgeVMm.map((v) => v - foremost)
  const across = factorFor(ACROSS, 2 * half, roomPx - BARS_PX - MARGIN_PX)
  const depth = factorFor(DEPTH, Math.max(plan.reliefMm, ...depthsMm, LEAST_DEPTH_MM), curvePx)
  const middle = (roomPx - BARS_PX) / 2
  const place = (uMm: number, depthMm: number): Place => [
    middle + uMm * across * PX_PER_MM,
    TOP_PX + depthMm * depth * PX_PER_MM,
  ]
  const wantedAt = (share: number): Place => place(share * half, wantedDepthMm(plan.edgeRadiusMm, share * half))
  return {
    across,
    depth,
    heightPx: floorPxOf(curvePx) + NAMES_PX,
    topPx: TOP_PX,
    floorPx: floorPxOf(curvePx),
    leftPx: place(-half, 0)[0],
    rightPx: place(half, 0)[0],
    wanted: steps(POINTS).map(wantedAt),
    predicted: grind.edgeUMm.map((u, k) => place(u, depthsMm[k] ?? 0)),
    diamonds: steps(4).map(wantedAt),
  }
}

/** @returns an SVG path through places */
export const lineOf = (places: readonly Place[]): string =>
  `M${places.map((each) => each.map((px) => px.toFixed(1)).join(' ')).join('L')}`
