import type { Project } from '../../scene/SceneView.tsx'
import type { PointRow } from '../pointRow.ts'

/** Head of the load's arrow, and half its width (px). */
const HEAD_PX = 9
const HALF_PX = HEAD_PX / 2.4

/** Draws the load from its handle to the blade, where it presses: a line out to the head and back round it. @param presses else none */
export const drawLoadArrow = (row: PointRow, project: Project, presses: boolean): void => {
  row.start()
  if (presses) {
    const from = project('loadTail')
    const to = project('load')
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]) || 1
    const dx = (to[0] - from[0]) / length
    const dy = (to[1] - from[1]) / length
    const baseX = to[0] - dx * HEAD_PX
    const baseY = to[1] - dy * HEAD_PX
    row.add(from[0], from[1])
    row.add(baseX, baseY)
    row.add(baseX - dy * HALF_PX, baseY + dx * HALF_PX)
    row.add(to[0], to[1])
    row.add(baseX + dy * HALF_PX, baseY - dx * HALF_PX)
    row.add(baseX, baseY)
  }
  row.end()
}
