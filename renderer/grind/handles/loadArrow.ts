import type { Project } from '../../scene/SceneView.tsx'

/** Head of the load's arrow (px). */
const HEAD_PX = 9

const pathOf = ([ax, ay]: readonly [number, number], [bx, by]: readonly [number, number]): string => {
  const length = Math.hypot(bx - ax, by - ay) || 1
  const [dx, dy] = [((bx - ax) / length) * HEAD_PX, ((by - ay) / length) * HEAD_PX]
  const head = `M${bx - dx - dy / 2.4} ${by - dy + dx / 2.4}L${bx} ${by}L${bx - dx + dy / 2.4} ${by - dy - dx / 2.4}Z`
  return `M${ax} ${ay}L${bx - dx} ${by - dy}${head}`
}

/** Draws the load from its handle to the blade, where it presses; none where that handle is away. */
export const drawLoadArrow = (box: HTMLElement, project: Project): void => {
  const presses = box.querySelector('[data-handle="reach"]') !== null
  box.querySelector('.load-arrow-3d')?.setAttribute('d', presses ? pathOf(project('loadTail'), project('load')) : '')
}
