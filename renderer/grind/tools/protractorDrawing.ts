import type { BevelAngles } from '../../../geometry/protractor.ts'
import { restUnder, type SteelLine } from '../../../geometry/straightedge.ts'
import { lineOf, type Place } from '../../glass/glassLayout.ts'
import { factorFor, PX_PER_MM } from '../../ui/scale.ts'

/** Factors a bevel may be drawn with. */
const FACTORS = [1, 2, 3, 5, 8, 10, 15, 20, 30, 50] as const
/** Room behind the heel, as a share of the bevel's length along the back. */
const BEHIND_SHARE = 0.2
const LEFT_PX = 16
const ABOVE_PX = 18
/** The protractor's arm and base (px). */
const ARM_PX = 7
const BASE_PX = 9
const BELOW_PX = 24
/** Where the two arcs stand, as shares of the bevel. */
const TIP_ARC_SHARE = 0.42
const CHORD_ARC_SHARE = 0.74
/** From an arc to its words (px). */
const WORDS_PX = 6

/** An angle drawn: its line from the edge, its arc from the back, and where its words stand. */
export interface DrawnAngle {
  readonly line: string
  readonly arc: string
  readonly words: Place
}

/** The bevel in section with a protractor on it. */
export interface ProtractorDrawing {
  readonly factor: number
  readonly heightPx: number
  readonly steel: string
  readonly bevel: string
  readonly tip: DrawnAngle
  readonly chord: DrawnAngle
  readonly arm: string
  readonly base: string
}

/** From the drawing's edge point at an angle up from the back. */
const away = ([x, y]: Place, rad: number, px: number): Place => [x + px * Math.cos(rad), y - px * Math.sin(rad)]

const drawn = (edge: Place, rad: number, lengthPx: number, arcPx: number): DrawnAngle => {
  const [toX, toY] = away(edge, rad, arcPx)
  const [x, y] = away(edge, rad / 2, arcPx + WORDS_PX)
  return {
    line: lineOf([edge, away(edge, rad, lengthPx)]),
    arc: `M${(edge[0] + arcPx).toFixed(1)} ${edge[1].toFixed(1)}A${arcPx.toFixed(1)} ${arcPx.toFixed(1)} 0 0 0 ${toX.toFixed(1)} ${toY.toFixed(1)}`,
    words: [x, y + 5],
  }
}

/** @returns the drawing of a bevel. @param section heights from the back, as `bevelAngles` takes them */
export const protractorDrawing = (section: SteelLine, angles: BevelAngles, roomPx: number): ProtractorDrawing => {
  const end = section.atMm.length - 1
  const edgeMm = section.backMm[0] as number
  const heelMm = (section.backMm[end] as number) - edgeMm
  const thickMm = section.atMm[end] as number
  const factor = factorFor(FACTORS, heelMm * (1 + BEHIND_SHARE), roomPx - LEFT_PX)
  const pxPerMm = factor * PX_PER_MM
  const backPx = ABOVE_PX + thickMm * pxPerMm
  const place = (vMm: number, nMm: number): Place => [LEFT_PX + (vMm - edgeMm) * pxPerMm, backPx - nMm * pxPerMm]
  const points = Array.from(section.atMm, (n, j) => place(section.backMm[j] as number, n))
  const behindMm = edgeMm + heelMm * (1 + BEHIND_SHARE)
  const edge = place(edgeMm, 0)
  const lengthPx = angles.chordMm * pxPerMm
  return {
    factor,
    heightPx: backPx + BELOW_PX,
    steel: `${lineOf([...points, place(behindMm, thickMm), place(behindMm, 0)])}Z`,
    bevel: lineOf(points),
    tip: drawn(edge, angles.tipRad, lengthPx, TIP_ARC_SHARE * lengthPx),
    chord: drawn(edge, angles.chordRad, lengthPx, CHORD_ARC_SHARE * lengthPx),
    arm: armPath(section, angles.chordRad, place, thickMm),
    base: `M${edge[0] - 10} ${edge[1]}H${place(behindMm, 0)[0]}v${BASE_PX}H${edge[0] - 10}Z`,
  }
}

/** The arm as it lies on the bevel: on edge and heel where the bevel is hollow, else on what stands out most. */
const armPath = (
  section: SteelLine,
  chordRad: number,
  place: (vMm: number, nMm: number) => Place,
  thickMm: number,
): string => {
  const { atZeroMm, slope } = restUnder(section, 0)
  const at = (share: number): Place => place(atZeroMm + slope * share * thickMm, share * thickMm)
  const out = (from: Place): Place => away(from, chordRad + Math.PI / 2, ARM_PX)
  const [low, high] = [at(-0.06), at(1.12)]
  return `${lineOf([low, high, out(high), out(low)])}Z`
}
