import { fillBoard } from '../../geometry/shaving.ts'
import { lineOf, type Place } from '../glass/glassLayout.ts'
import { ACROSS, DEPTH, factorFor, PX_PER_MM } from '../ui/scale.ts'
import type { Seen } from './seen.ts'

/** The section across the wood laid out: factors, and where its parts stand (px). */
export interface SectionLayout {
  readonly across: number
  readonly depth: number
  readonly middlePx: number
  readonly surfacePx: number
  readonly heightPx: number
  /** The board before this pass and after it, from left to right. */
  readonly before: readonly Place[]
  readonly after: readonly Place[]
  /** The whole edge, also where it stands clear of the wood. */
  readonly edge: readonly Place[]
  readonly crown: Place
  readonly corners: readonly [left: Place, right: Place]
  readonly board: readonly [leftPx: number, rightPx: number]
  /** Where the cap iron's front lies; null: too far back for the drawing, or there is none. */
  readonly capPx: number | null
}

/** Room over the board and under the cut (px). */
interface RoomsPx {
  readonly abovePx: number
  readonly footPx: number
}

const ROOMS_PX: RoomsPx = { abovePx: 96, footPx: 72 }
/** The depth of the cut takes at most this share of the room below the surface. */
const CUT_SHARE = 0.6
const MARGIN_PX = 32
/** Passes made before this one, as far as the drawing reaches. */
const PASSES_BEFORE = 8
/** Places across the drawing at which the board is worked out. */
const PLACES = 480

/** @returns the places at which the board is worked out, from left to right (mm from the board's middle) */
export const boardPlaces = (roomPx: number, middlePx: number, across: number): Float64Array =>
  Float64Array.from({ length: PLACES + 1 }, (_, k) => ((k / PLACES) * roomPx - middlePx) / (across * PX_PER_MM))

/** @returns where the iron's middle went in the passes before this one (mm), as far as the drawing reaches; none where one pass is alone */
export const passesBefore = (stepMm: number | null): readonly number[] =>
  stepMm === null ? [] : Array.from({ length: PASSES_BEFORE }, (_, k) => -stepMm * (k + 1))

/** @returns the layout in a room */
export const sectionLayout = (
  seen: Seen,
  stepMm: number | null,
  boardMm: number,
  roomPx: number,
  roomBelowPx: number,
  { abovePx, footPx }: RoomsPx = ROOMS_PX,
): SectionLayout => {
  const { profile, seatSine, depthMm, cap } = seen
  const widthMm = (profile.uMm.at(-1) as number) - (profile.uMm[0] as number)
  const across = factorFor(ACROSS, widthMm * (stepMm === null ? 1.15 : 1.6), roomPx - MARGIN_PX)
  const depth = factorFor(DEPTH, depthMm, roomBelowPx * CUT_SHARE)
  const middlePx = stepMm === null ? roomPx / 2 : roomPx * 0.62
  const xPx = (mm: number): number => middlePx + mm * across * PX_PER_MM
  const yPx = (belowMm: number): number => abovePx + belowMm * depth * PX_PER_MM
  const xs = boardPlaces(roomPx, middlePx, across)
  const offsets = passesBefore(stepMm)
  const below = new Float64Array(xs.length)
  const surface = (passes: readonly number[]): readonly Place[] => {
    fillBoard(below, profile, passes, depthMm, seatSine, xs)
    return Array.from(below, (each, k) => [xPx(xs[k] as number), yPx(each)])
  }
  const placeOf = (i: number): Place => [
    xPx(profile.uMm[i] as number),
    yPx(depthMm - (profile.behindMm[i] as number) * seatSine),
  ]
  const edge = profile.uMm.map((_, i) => placeOf(i))
  const foremost = profile.behindMm.indexOf(0)
  const alsoForemost = profile.behindMm.lastIndexOf(0)
  const capPx = cap ? yPx(depthMm - cap.setbackMm * seatSine) : null
  return {
    across,
    depth,
    middlePx,
    surfacePx: abovePx,
    heightPx: abovePx + roomBelowPx + footPx,
    before: surface(offsets),
    after: surface([0, ...offsets]),
    edge,
    crown: placeOf((foremost + alsoForemost) >> 1),
    corners: [edge[0] as Place, edge.at(-1) as Place],
    board: [Math.max(0, xPx(-boardMm / 2)), Math.min(roomPx, xPx(boardMm / 2))],
    capPx: capPx === null || capPx < 0 ? null : capPx,
  }
}

/** The wood of a section as SVG paths. */
export interface WoodPaths {
  readonly shaving: string
  readonly wood: string
  readonly before: string
  readonly edge: string
}

/** @returns what is drawn of the wood in a room this wide */
export const woodPaths = ({ before, after, edge, heightPx }: SectionLayout, roomPx: number): WoodPaths => {
  const down = `L${roomPx} ${heightPx}H0Z`
  const surface = lineOf(before)
  return { shaving: surface + down, wood: lineOf(after) + down, before: surface, edge: lineOf(edge) }
}
