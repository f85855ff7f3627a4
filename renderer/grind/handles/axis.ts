import type { AnchorName } from '../../scene/anchors.ts'
import type { Project } from '../../scene/SceneView.tsx'

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
