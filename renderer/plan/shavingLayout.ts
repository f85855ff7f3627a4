import type { Report } from '../../geometry/report.ts'
import { radFromDeg } from '../../geometry/units.ts'
import { floorPxOf, type Place } from '../glass/glassLayout.ts'
import { wantedDepthMm } from '../glass/wantedDepth.ts'
import { ACROSS, DEPTH, factorFor, PX_PER_MM } from '../ui/scale.ts'

/** The section of the shaving laid out: its factors, the edge under the board's surface, and where its parts stand. */
export interface ShavingLayout {
  readonly across: number
  readonly depth: number
  readonly heightPx: number
  readonly surfacePx: number
  readonly middlePx: number
  readonly deepestPx: number
  readonly curve: readonly Place[]
  readonly leftPx: number
  readonly rightPx: number
}

const SURFACE_PX = 34
/** The deepest point takes this share of a curve's room; the board goes on below it. */
const DEEPEST_SHARE = 0.75
const MARGIN_PX = 24
/** Points on the curve: smooth at any size it is drawn in. */
const POINTS = 60

/** @returns the layout for a tool with a seat: the wood sees relief times the sine of the seat angle */
export const shavingLayout = (
  { plan, job }: Report,
  seatAngleDeg: number,
  roomPx: number,
  curvePx: number,
): ShavingLayout => {
  const { shavingDepthMm } = job.aim
  const { widthMm } = job.blade
  const roomBelowPx = curvePx * DEEPEST_SHARE
  const across = factorFor(ACROSS, widthMm, roomPx - MARGIN_PX)
  const depth = factorFor(DEPTH, shavingDepthMm, roomBelowPx)
  const sine = Math.sin(radFromDeg(seatAngleDeg))
  const half = (plan.shavingWidthMm ?? widthMm) / 2
  const place = (uMm: number): Place => [
    roomPx / 2 + uMm * across * PX_PER_MM,
    SURFACE_PX + depth * PX_PER_MM * (shavingDepthMm - sine * wantedDepthMm(plan.edgeRadiusMm, uMm)),
  ]
  return {
    across,
    depth,
    heightPx: floorPxOf(curvePx),
    surfacePx: SURFACE_PX,
    middlePx: roomPx / 2,
    deepestPx: place(0)[1],
    curve: Array.from({ length: POINTS + 1 }, (_, k) => place(half * ((2 * k) / POINTS - 1))),
    leftPx: place(-half)[0],
    rightPx: place(half)[0],
  }
}
