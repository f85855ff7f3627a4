import type { Project } from '../scene/SceneView.tsx'
import { EDGE_PX, find, type LabelSpec, type Place, toMiddle } from './placeLabels.ts'
import { type PointRow, rowOn } from './pointRow.ts'

/** A label with its line, both found once: with a picture nothing is looked for and nothing is made. */
interface Leader {
  readonly label: LabelSpec
  readonly element: HTMLElement
  readonly row: PointRow
}

/** The lines of an overlay. */
export interface Lines {
  readonly leaders: readonly Leader[]
  readonly dimensions: readonly (readonly [row: PointRow, pair: LabelSpec['anchors']])[]
}

/** @returns the lines as they stand in the page now */
export const linesIn = (
  box: HTMLElement,
  labels: readonly LabelSpec[],
  dimensions: readonly LabelSpec['anchors'][],
): Lines => ({
  leaders: labels.flatMap((label) => {
    const element = find<HTMLElement>(box, 'label', label.id)
    const line = find<SVGPolylineElement>(box, 'leader', label.id)
    return element && line ? [{ label, element, row: rowOn(line) }] : []
  }),
  dimensions: dimensions.flatMap((pair, k) => {
    const line = find<SVGPolylineElement>(box, 'dimension', k)
    return line ? [[rowOn(line), pair] as const] : []
  }),
})

/** Draws every line where its part is now. */
export const drawLines = ({ leaders, dimensions }: Lines, places: Map<string, Place>, project: Project): void => {
  for (const leader of leaders) drawLeader(leader, places, project)
  for (const each of dimensions) drawDimension(each[0], each[1], project)
}

/** Where a leader meets a label, from its upper edge (px): the middle of the figure; and how far it goes level. */
const FIGURE_PX = 18
const LEVEL_PX = 12

const at: [number, number] = [0, 0]

/** From a label to its part; none from a hidden one. */
const drawLeader = ({ label, element, row }: Leader, places: Map<string, Place>, project: Project): void => {
  const place = places.get(label.id)
  row.start()
  if (place && !element.hidden) {
    const sign = label.side === 'left' ? 1 : -1
    toMiddle(project, label.anchors, at)
    row.add(place.xPx + sign * EDGE_PX, place.yPx + FIGURE_PX)
    row.add(place.xPx + sign * (EDGE_PX + LEVEL_PX), place.yPx + FIGURE_PX)
    row.add(at[0], at[1])
  }
  row.end()
}

/** Half the length of a dimension's tick (px). */
const TICK_PX = 6

/** From point to point, with a plain tick across each end. */
const drawDimension = (row: PointRow, pair: LabelSpec['anchors'], project: Project): void => {
  const a = project(pair[0])
  const b = project(pair[1] ?? pair[0])
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
  const tickX = (-(b[1] - a[1]) / length) * TICK_PX
  const tickY = ((b[0] - a[0]) / length) * TICK_PX
  row.start()
  for (let end = 0; end < 2; end++) {
    const point = end === 0 ? a : b
    // Across, and on from the middle of the tick.
    row.add(point[0] - tickX, point[1] - tickY)
    row.add(point[0] + tickX, point[1] + tickY)
    row.add(point[0], point[1])
    if (end === 0) row.add(b[0], b[1])
  }
  row.end()
}
