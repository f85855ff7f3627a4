import { type ReactNode, type RefObject, useCallback, useEffect, useLayoutEffect, useRef } from 'react'
import type { AnchorName } from '../scene/machine.ts'
import type { Project } from '../scene/SceneView.tsx'
import { packLabels } from './packLabels.ts'

/** A label beside the part it belongs to. Two anchors: the middle of the dimension between them. */
export interface LabelSpec {
  readonly id: string
  readonly side: 'left' | 'right'
  readonly anchors: readonly [AnchorName] | readonly [AnchorName, AnchorName]
  /** Left out first where there is little room: the higher, the sooner. */
  readonly rank: 1 | 2 | 3
  readonly content: ReactNode
}

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

/** Room kept between labels, and between a label and its leader (px). */
const GAP_PX = 14
const EDGE_PX = 8
/** Columns stand at least this far in from the sides of the picture (px), so that a label has room. */
const COLUMN_PX = 172
/** Distance between the machine and the columns (px). */
const CLEAR_PX = 40
/** Below this width only what has to be known is labelled (px). */
const NARROW_PX = 640
/** Where a leader meets a label, from its upper edge (px): the middle of the figure. */
const FIGURE_PX = 18

interface Place {
  xPx: number
  yPx: number
}

const middle = (project: Project, anchors: LabelSpec['anchors']): readonly [number, number] => {
  const a = project(anchors[0])
  const b = anchors[1] === undefined ? a : project(anchors[1])
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
}

/** Labels, leaders and dimensions over the picture. Leaders follow every picture; labels move only when it is still. */
export const Overlay = ({ labels, dimensions, children, moving, drawRef }: OverlayProps) => {
  const box = useRef<HTMLDivElement>(null)
  const project = useRef<Project | null>(null)
  const places = useRef(new Map<string, Place>())
  const stillFor = useRef(moving)
  stillFor.current = moving

  const draw = useCallback(() => {
    if (!box.current || !project.current) return
    for (const label of labels) drawLeader(box.current, label, places.current.get(label.id), project.current)
    dimensions.forEach((pair, k) => {
      drawDimension(
        box.current as HTMLElement,
        k,
        (project.current as Project)(pair[0]),
        (project.current as Project)(pair[1]),
      )
    })
  }, [labels, dimensions])
  const settle = useCallback(() => {
    if (!box.current || !project.current) return
    placeLabels(box.current, labels, project.current, places.current)
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
          <path key={pair.join()} className="grind-dimension" data-dimension={k} />
        ))}
        {labels.map(({ id }) => (
          <path key={id} className="grind-leader" data-leader={id} />
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

const find = <T extends Element>(box: HTMLElement, name: string, value: string | number): T | null =>
  box.querySelector<T>(`[data-${name}="${value}"]`)

/** Puts each column beside the machine and packs its labels. */
const placeLabels = (
  box: HTMLElement,
  labels: readonly LabelSpec[],
  project: Project,
  places: Map<string, Place>,
): void => {
  const [widthPx, heightPx] = [box.clientWidth, box.clientHeight]
  const most = widthPx < NARROW_PX ? 1 : 3
  for (const { id, rank } of labels) find<HTMLElement>(box, 'label', id)?.toggleAttribute('hidden', rank > most)
  for (const side of ['left', 'right'] as const) {
    const column = labels.filter((label) => label.side === side && label.rank <= most)
    const anchors = column.map((label) => middle(project, label.anchors))
    const xPx = columnPlace(
      side,
      anchors.map(([x]) => x),
      widthPx,
    )
    const heights = column.map(({ id }) => find<HTMLElement>(box, 'label', id)?.offsetHeight ?? 0)
    const wishes = anchors.map(([, yPx], k) => ({ wishPx: yPx + 8, heightPx: heights[k] ?? 0 }))
    packLabels(wishes, EDGE_PX, heightPx - EDGE_PX, GAP_PX).forEach((yPx, k) => {
      const { id } = column[k] as LabelSpec
      places.set(id, { xPx, yPx })
      const element = find<HTMLElement>(box, 'label', id)
      if (element)
        element.style.transform = `translate(${side === 'left' ? `calc(${xPx}px - 100%)` : `${xPx}px`}, ${yPx}px)`
    })
  }
}

const columnPlace = (side: 'left' | 'right', anchorsPx: readonly number[], widthPx: number): number =>
  side === 'left'
    ? Math.max(Math.min(...anchorsPx) - CLEAR_PX, COLUMN_PX)
    : Math.min(Math.max(...anchorsPx) + CLEAR_PX, widthPx - COLUMN_PX)

const drawLeader = (box: HTMLElement, label: LabelSpec, place: Place | undefined, project: Project): void => {
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

const drawDimension = (
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
