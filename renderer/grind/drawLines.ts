import type { Project } from '../scene/SceneView.tsx'
import { EDGE_PX, find, type LabelSpec, middle, type Place } from './placeLabels.ts'

/** Where a leader meets a label, from its upper edge (px): the middle of the figure. */
const FIGURE_PX = 18

/** Draws the leader from a label to its part; none from a hidden one. */
export const drawLeader = (box: HTMLElement, label: LabelSpec, place: Place | undefined, project: Project): void => {
  const path = find<SVGPathElement>(box, 'leader', label.id)
  const hidden = find<HTMLElement>(box, 'label', label.id)?.hidden ?? true
  if (!place || hidden) {
    path?.setAttribute('d', '')
    return
  }
  const [x, y] = middle(project, label.anchors)
  const sign = label.side === 'left' ? 1 : -1
  const fromX = place.xPx + sign * EDGE_PX
  const fromY = place.yPx + FIGURE_PX
  path?.setAttribute('d', `M${fromX.toFixed(1)} ${fromY.toFixed(1)}h${sign * 12}L${x.toFixed(1)} ${y.toFixed(1)}`)
}

/** Half the length of a dimension's tick (px). */
const TICK_PX = 6

/** Draws a dimension between two points, with plain ticks. */
export const drawDimension = (
  box: HTMLElement,
  k: number,
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
): void => {
  const length = Math.hypot(bx - ax, by - ay) || 1
  const [tx, ty] = [(-(by - ay) / length) * TICK_PX, ((bx - ax) / length) * TICK_PX]
  const tick = (x: number, y: number): string =>
    `M${(x - tx).toFixed(1)} ${(y - ty).toFixed(1)}L${(x + tx).toFixed(1)} ${(y + ty).toFixed(1)}`
  const line = `M${ax.toFixed(1)} ${ay.toFixed(1)}L${bx.toFixed(1)} ${by.toFixed(1)}`
  find<SVGPathElement>(box, 'dimension', k)?.setAttribute('d', tick(ax, ay) + line + tick(bx, by))
}
