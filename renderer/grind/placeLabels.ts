import type { ReactNode } from 'react'
import type { AnchorName } from '../scene/anchors.ts'
import type { Project } from '../scene/SceneView.tsx'
import { textScale } from '../ui/textScale.ts'
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

/** Room kept between labels, and between a label and its leader (px). */
const GAP_PX = 14
export const EDGE_PX = 8
/** Distance between the machine and the columns (px). */
const CLEAR_PX = 40
/** Below this width only what has to be known is labelled (px). */
const NARROW_PX = 640
/** Where a label stands (px). */
export interface Place {
  xPx: number
  yPx: number
}

/** @returns the part of the overlay with this mark */
export const find = <T extends Element>(box: HTMLElement, name: string, value: string | number): T | null =>
  box.querySelector<T>(`[data-${name}="${value}"]`)

/** Where the middle of some anchors is in the picture. @param out filled and returned */
export const toMiddle = (project: Project, anchors: LabelSpec['anchors'], out: [number, number]): [number, number] => {
  const a = project(anchors[0])
  const b = anchors[1] === undefined ? a : project(anchors[1])
  out[0] = (a[0] + b[0]) / 2
  out[1] = (a[1] + b[1]) / 2
  return out
}

/** Puts each column beside the machine and packs its labels. */
export const placeLabels = (
  box: HTMLElement,
  labels: readonly LabelSpec[],
  project: Project,
  places: Map<string, Place>,
): void => {
  const [widthPx, heightPx] = [box.clientWidth, box.clientHeight]
  const scale = textScale()
  const most = widthPx < NARROW_PX * scale ? 1 : 3
  for (const { id, rank } of labels) find<HTMLElement>(box, 'label', id)?.toggleAttribute('hidden', rank > most)
  for (const side of ['left', 'right'] as const) {
    const column = labels.filter((label) => label.side === side && label.rank <= most)
    const anchors = column.map((label) => toMiddle(project, label.anchors, [0, 0]))
    const widths = column.map(({ id }) => find<HTMLElement>(box, 'label', id)?.offsetWidth ?? 0)
    const leastPx = Math.max(...widths) + EDGE_PX * scale
    const besidePx = columnPlace(
      side,
      anchors.map(([x]) => x),
      widthPx,
      leastPx,
    )
    const heights = column.map(({ id }) => find<HTMLElement>(box, 'label', id)?.offsetHeight ?? 0)
    const wishes = anchors.map(([, yPx], k) => ({ wishPx: yPx + 8, heightPx: heights[k] ?? 0 }))
    const tops = packLabels(wishes, EDGE_PX, heightPx - EDGE_PX, GAP_PX)
    const [endXPx, endYPx] = project('barEnd')
    const meetsBar = tops.some((yPx, k) => yPx - GAP_PX < endYPx && endYPx < yPx + (heights[k] ?? 0) + GAP_PX)
    const xPx = side === 'left' && meetsBar ? Math.max(Math.min(besidePx, endXPx - GAP_PX), leastPx) : besidePx
    tops.forEach((yPx, k) => {
      const { id } = column[k] as LabelSpec
      places.set(id, { xPx, yPx })
      const element = find<HTMLElement>(box, 'label', id)
      if (element)
        element.style.transform = `translate(${side === 'left' ? `calc(${xPx}px - 100%)` : `${xPx}px`}, ${yPx}px)`
    })
  }
}

/** @param roomPx what the column's widest label takes, up to the side of the picture */
const columnPlace = (side: 'left' | 'right', anchorsPx: readonly number[], widthPx: number, roomPx: number): number =>
  side === 'left'
    ? Math.max(Math.min(...anchorsPx) - CLEAR_PX, roomPx)
    : Math.min(Math.max(...anchorsPx) + CLEAR_PX, widthPx - roomPx)
