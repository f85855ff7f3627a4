import { type RefObject, useEffect, useRef } from 'react'
import type { Project } from '../../scene/SceneView.tsx'
import { useViewing } from '../viewing.ts'
import './place.css'

/** Follows every picture through this. */
export type DrawPlace = (project: Project) => void

/** Half the length of the mark (px). */
const HALF_PX = 12

/** The place that is marked in the views, on the edge of the model: a line across it. */
export const ModelPlace = ({ drawRef }: { readonly drawRef: RefObject<DrawPlace> }) => {
  const uMm = useViewing((viewing) => viewing.markedUMm)
  const line = useRef<SVGPathElement>(null)
  const view = useRef<Project | null>(null)
  useEffect(() => {
    const draw = (project: Project): void => {
      view.current = project
      line.current?.setAttribute('d', uMm === null ? '' : markPath(project, uMm))
    }
    drawRef.current = draw
    if (view.current) draw(view.current)
  }, [drawRef, uMm])
  return (
    <svg className="scene-place" aria-hidden="true">
      <path ref={line} className="place-line" data-model-place={uMm ?? ''} />
    </svg>
  )
}

/** Square to the edge as the picture has it, half to each side. */
const markPath = (project: Project, uMm: number): string => {
  const [x, y] = project(uMm)
  const [[ax, ay], [bx, by]] = [project('edgeLeft'), project('edgeRight')]
  const length = Math.hypot(bx - ax, by - ay) || 1
  const [dx, dy] = [(-(by - ay) / length) * HALF_PX, ((bx - ax) / length) * HALF_PX]
  return `M${(x - dx).toFixed(1)} ${(y - dy).toFixed(1)}L${(x + dx).toFixed(1)} ${(y + dy).toFixed(1)}`
}
