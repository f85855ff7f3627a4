import { type RefObject, useEffect, useRef } from 'react'
import type { Project } from '../../scene/SceneView.tsx'
import { type PointRow, usePointRow } from '../pointRow.ts'
import { useViewing } from '../viewing.ts'
import './place.css'

/** Follows every picture through this. */
export type DrawPlace = (project: Project) => void

/** Half the length of the mark (px). */
const HALF_PX = 12

/** The place that is marked in the views, on the edge of the model: a line across it. */
export const ModelPlace = ({ drawRef }: { readonly drawRef: RefObject<DrawPlace> }) => {
  const uMm = useViewing((viewing) => viewing.markedUMm)
  const line = usePointRow<SVGPolylineElement>()
  const view = useRef<Project | null>(null)
  useEffect(() => {
    const draw = (project: Project): void => {
      view.current = project
      drawMark(line, project, uMm)
    }
    drawRef.current = draw
    if (view.current) draw(view.current)
  }, [drawRef, uMm, line])
  return (
    <svg className="scene-place" aria-hidden="true">
      <polyline ref={line.ref} className="place-line" data-model-place={uMm ?? ''} />
    </svg>
  )
}

/** Square to the edge as the picture has it, half to each side. */
const drawMark = (line: PointRow, project: Project, uMm: number | null): void => {
  line.start()
  if (uMm !== null) {
    const at = project(uMm)
    const a = project('edgeLeft')
    const b = project('edgeRight')
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1
    const dx = (-(b[1] - a[1]) / length) * HALF_PX
    const dy = ((b[0] - a[0]) / length) * HALF_PX
    line.add(at[0] - dx, at[1] - dy)
    line.add(at[0] + dx, at[1] + dy)
  }
  line.end()
}
