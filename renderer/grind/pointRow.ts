import { createRef, type RefObject, useState } from 'react'

/** The shapes that are drawn point by point. */
type Pointed = SVGPolylineElement | SVGPolygonElement

/**
 * The points of a polyline or polygon, written over with every frame: once as many are there as are drawn, nothing is made,
 * neither lists nor text.
 */
export interface PointRow<E extends Pointed = Pointed> {
  /** For the element that is drawn. */
  readonly ref: RefObject<E | null>
  start(): void
  add(xPx: number, yPx: number): void
  /** Points that are over from before come to lie on the last one. */
  end(): void
}

const grown = (written: Float64Array<ArrayBuffer>): Float64Array<ArrayBuffer> => {
  const more = new Float64Array(Math.max(2 * written.length, 32))
  more.set(written)
  return more
}

const newPointRow = <E extends Pointed>(): PointRow<E> => {
  const ref = createRef<E>()
  let drawn: E | null = null
  let kept: SVGPoint[] = []
  // What was last written: most places across stay where they are, and a number handed to the page is made for it.
  let written = new Float64Array(0)
  let count = 0
  let seen = true
  const more = (): SVGPoint | null => {
    const point = drawn?.ownerSVGElement?.createSVGPoint()
    if (!drawn || !point) return null
    const fresh = drawn.points.appendItem(point)
    kept.push(fresh)
    if (written.length < 2 * kept.length) written = grown(written)
    // A fresh point is at 0, 0.
    written.fill(0, 2 * kept.length - 2)
    return fresh
  }
  const write = (k: number, xPx: number, yPx: number): void => {
    const point = kept[k] ?? more()
    if (!point) return
    if (written[2 * k] !== xPx) point.x = written[2 * k] = xPx
    if (written[2 * k + 1] !== yPx) point.y = written[2 * k + 1] = yPx
  }
  return {
    ref,
    start: () => {
      count = 0
      if (ref.current === drawn) return
      drawn = ref.current
      kept = []
      seen = true
    },
    add: (xPx, yPx) => {
      // A drawing refuses what is no number; a place without one is left out, as it would be in a path.
      if (!Number.isFinite(xPx) || !Number.isFinite(yPx)) return
      write(count, xPx, yPx)
      count++
    },
    end: () => {
      const last = 2 * Math.max(count - 1, 0)
      for (let k = count; k < kept.length; k++) write(k, written[last] as number, written[last + 1] as number)
      const shown = count > 0
      if (shown !== seen && drawn) drawn.style.visibility = shown ? 'inherit' : 'hidden'
      seen = shown
    },
  }
}

const rows = new WeakMap<Pointed, PointRow>()

/** The row of points of an element that is in the page already: always the same one. */
export const rowOn = (element: Pointed): PointRow => {
  const known = rows.get(element)
  if (known) return known
  const fresh = newPointRow<Pointed>()
  fresh.ref.current = element
  rows.set(element, fresh)
  return fresh
}

/** A row of points for the element that takes its `ref`. */
export const usePointRow = <E extends Pointed>(): PointRow<E> => useState(newPointRow<E>)[0]

const moves = new WeakMap<SVGGraphicsElement, SVGTransform>()

/** Moves an element (px) without writing its transform as text. */
export const moveTo = (element: SVGGraphicsElement | null, xPx: number, yPx: number): void => {
  const svg = element?.ownerSVGElement
  if (!svg) return
  const move = moves.get(element) ?? element.transform.baseVal.initialize(svg.createSVGTransform())
  moves.set(element, move)
  move.setTranslate(xPx, yPx)
}

/** From where to where a rectangle goes across (px), without writing that as text. */
export const setSpan = (rect: SVGRectElement | null, xPx: number, widthPx: number): void => {
  if (!rect) return
  rect.x.baseVal.value = xPx
  rect.width.baseVal.value = widthPx
}
