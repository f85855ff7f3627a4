import { bandOf, burrAllAlong } from '../band.ts'
import { meanReliefMm } from '../edge.ts'
import type { GrindState } from '../grind.ts'
import { nearestScale } from '../nearness.ts'
import { behindAt, profileOf } from '../profile.ts'
import type { FigureName } from './figureNames.ts'
import type { Find, Scene } from './scene.ts'

type Edge = NonNullable<ReturnType<Scene['edge']>>

const ofEdge =
  (read: (edge: Edge) => number): Find =>
  (scene) => {
    const edge = scene.edge()
    return edge && read(edge)
  }

const halfwayMm = (edge: Edge): number => {
  const profile = profileOf(edge.edgeUMm, edge.edgeVMm)
  const quarter = (edge.edgeUMm.at(-1) as number) / 2
  return (behindAt(profile, -quarter) + behindAt(profile, quarter)) / 2
}

/** At the middle, from the corner that stands further forward. */
const middleBehindMm = ({ edgeUMm, edgeVMm }: Edge): number => {
  const nearer = Math.min(edgeVMm[0] as number, edgeVMm.at(-1) as number)
  return Math.max(0, (edgeVMm[edgeUMm.length >> 1] as number) - nearer)
}

const nearestArc = (edge: Edge) =>
  nearestScale(
    edge.edgeUMm.map((u) => u * u),
    edge.edgeVMm,
  )

/** How far an edge is from the arc nearest to it, as much to one side as to the other. */
const offArcMm = (edge: Edge): number => nearestArc(edge).deviationMm

/** @returns that arc at the edge's own places, laid so that it is as far before the edge as behind it (mm) */
export const nearestArcMm = (edge: Edge): readonly number[] => {
  const { scale } = nearestArc(edge)
  const apart = edge.edgeVMm.map((v, i) => v - scale * (edge.edgeUMm[i] as number) ** 2)
  const middle = (Math.max(...apart) + Math.min(...apart)) / 2
  return edge.edgeUMm.map((u) => scale * u * u + middle)
}

const bare =
  (third: 0 | 1 | 2): Find =>
  (scene) => {
    const left = scene.inkLeft()
    return left && 1 - left[third]
  }

/** Mean of where the middles of the bare columns lie, from edge to heel. */
const inkPlace: Find = (scene) => {
  const middles = scene
    .firstInk()
    ?.columns.flatMap(({ from, to }) => (from === null || to === null ? [] : [(from + to) / 2]))
  return middles?.length ? middles.reduce((sum, each) => sum + each, 0) / middles.length : null
}

/** All of a column's old bevel, from edge to heel. */
const bevelMm = ({ throughCount, vStartMm, nMm }: GrindState, i: number): number => {
  const last = throughCount - 1
  const dv = (vStartMm[i * throughCount + last] as number) - (vStartMm[i * throughCount] as number)
  return Math.hypot(dv, nMm[last] as number)
}

/** What is left of the old bevel at a share of the width; all of it where the wheel never came. */
const bandAt =
  (share: 0 | 0.5 | 1): Find =>
  (scene) => {
    const field = scene.ground()
    if (field === null) return null
    const i = Math.round(share * (field.acrossCount - 1))
    return bandOf(field, i)?.fromEdgeMm ?? bevelMm(field, i)
  }

const bands = [bandAt(0), bandAt(0.5), bandAt(1)] as const

const bandUneven: Find = (scene) => {
  const found = bands.map((band) => band(scene))
  return found.some((mm) => mm === null) ? null : Math.max(...(found as number[])) - Math.min(...(found as number[]))
}

/** What the wheel leaves: edge, ink, band. */
export const groundFigures = {
  reliefMm: ofEdge(meanReliefMm),
  reliefLeftMm: ofEdge(({ reliefLeftMm }) => reliefLeftMm),
  reliefRightMm: ofEdge(({ reliefRightMm }) => reliefRightMm),
  reliefHalfwayMm: ofEdge(halfwayMm),
  halfwayShare: ofEdge((edge) => halfwayMm(edge) / meanReliefMm(edge)),
  skewDeg: ofEdge(({ skewDeg }) => skewDeg),
  leftLessRightMm: ofEdge(({ reliefLeftMm, reliefRightMm }) => reliefLeftMm - reliefRightMm),
  middleBehindMm: ofEdge(middleBehindMm),
  offArcMm: ofEdge(offArcMm),
  edgeLostMm: ofEdge(({ edgeVMm }) => Math.max(...edgeVMm)),
  inkPlaceShare: inkPlace,
  inkLeftShare: bare(0),
  inkMiddleShare: bare(1),
  inkRightShare: bare(2),
  bandLeftMm: bands[0],
  bandMiddleMm: bands[1],
  bandRightMm: bands[2],
  bandUnevenMm: bandUneven,
  burrAllAlong: (scene) => {
    const field = scene.ground()
    return field && (burrAllAlong(field) ? 1 : 0)
  },
  groundWoodReliefMm: (scene) => {
    const [edge, sine] = [scene.edge(), scene.sine()]
    return edge && sine !== null ? meanReliefMm(edge) * sine : null
  },
} as const satisfies Partial<Record<FigureName, Find>>
