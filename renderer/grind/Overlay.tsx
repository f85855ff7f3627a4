import { type ReactNode, type RefObject, useCallback, useEffect, useLayoutEffect, useRef } from 'react'
import type { AnchorName } from '../scene/anchors.ts'
import type { Project } from '../scene/SceneView.tsx'
import { drawLines, type Lines, linesIn } from './drawLines.ts'
import { type LabelSpec, type Place, placeLabels } from './placeLabels.ts'
import './overlay.css'

/** Draws the overlay for a picture; called with every one. */
export type DrawOverlay = (project: Project) => void

interface OverlayProps {
  readonly labels: readonly LabelSpec[]
  readonly dimensions: readonly (readonly [AnchorName, AnchorName])[]
  /** Handles and arrows, drawn by their own parts. */
  readonly children: ReactNode
  /** Labels keep their places while this holds. */
  readonly moving: boolean
  readonly drawRef: RefObject<DrawOverlay>
}

/** Labels, leaders and dimensions over the picture. Leaders follow every picture; labels move only when it is still. */
export const Overlay = ({ labels, dimensions, children, moving, drawRef }: OverlayProps) => {
  const box = useRef<HTMLDivElement>(null)
  const project = useRef<Project | null>(null)
  const places = useRef(new Map<string, Place>())
  const stillFor = useRef(moving)
  stillFor.current = moving

  const lines = useRef<Lines>({ leaders: [], dimensions: [] })
  useLayoutEffect(() => {
    if (box.current) lines.current = linesIn(box.current, labels, dimensions)
  }, [labels, dimensions])

  const draw = useCallback(() => {
    if (project.current) drawLines(lines.current, places.current, project.current)
  }, [])
  const settle = useCallback(() => {
    if (!box.current || !project.current) return
    placeLabels(box.current, labels, project.current, places.current)
    box.current.dataset.placed = 'true'
    draw()
  }, [labels, draw])

  useEffect(() => {
    let timer = 0
    drawRef.current = (next) => {
      project.current = next
      if (places.current.size === 0) settle()
      draw()
      clearTimeout(timer)
      if (!stillFor.current) timer = window.setTimeout(settle, STILL_MS)
    }
    return () => clearTimeout(timer)
  }, [drawRef, draw, settle])
  useLayoutEffect(() => {
    if (!moving) settle()
  }, [moving, settle])

  return (
    <div className="scene-overlay" ref={box}>
      <svg className="scene-lines" aria-hidden="true">
        {dimensions.map((pair, k) => (
          <polyline key={pair.join()} className="grind-dimension" data-dimension={k} />
        ))}
        {labels.map(({ id }) => (
          <polyline key={id} className="grind-leader" data-leader={id} />
        ))}
      </svg>
      {children}
      {labels.map(({ id, side, content }) => (
        <div key={id} className="scene-label" data-label={id} data-side={side}>
          {content}
        </div>
      ))}
    </div>
  )
}

/** A picture counts as still after this long without a new one (ms). */
const STILL_MS = 90
