import type { AnchorName } from '../../scene/anchors.ts'
import type { Project } from '../../scene/SceneView.tsx'
import type { HandleKind } from './kind.ts'
import { type Range, snapped } from './range.ts'

/** A line of the machine as it lies in the picture when it is taken hold of. */
export interface Axis {
  readonly xPxPerMm: number
  readonly yPxPerMm: number
}

/** The line between two points that are so many mm apart. */
export const axisOf = (project: Project, from: AnchorName, to: AnchorName, mm: number): Axis => {
  const [[ax, ay], [bx, by]] = [project(from), project(to)]
  return { xPxPerMm: (bx - ax) / mm, yPxPerMm: (by - ay) / mm }
}

/** Seen nearly end on (px for a mm), a line would turn a twitch of the hand into a hand's breadth. */
const LEAST_PX_PER_MM = 0.25

/** How far a move of the pointer goes along the line (mm); what goes across it does nothing. */
export const alongMm = ({ xPxPerMm, yPxPerMm }: Axis, dxPx: number, dyPx: number): number =>
  (dxPx * xPxPerMm + dyPx * yPxPerMm) / Math.max(xPxPerMm ** 2 + yPxPerMm ** 2, LEAST_PX_PER_MM ** 2)

/** Takes hold of a value that goes along the line between two points, which are so many mm apart. */
export const gripAlong =
  (from: AnchorName, to: AnchorName, apartMm: number, value: number, range: Range): HandleKind['grip'] =>
  (project) => {
    const axis = axisOf(project, from, to, apartMm)
    return (dxPx, dyPx) => snapped(value + alongMm(axis, dxPx, dyPx), range)
  }
