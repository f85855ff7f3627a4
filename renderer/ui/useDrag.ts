import { type PointerEvent, useEffect, useRef } from 'react'

interface DragRules<T> {
  /** The value after the pointer has gone so far (px) from where it took hold. */
  at(start: T, dxPx: number, dyPx: number): T
  /** Told on the way; null when the drag is over or given up. */
  onDraft(value: T | null): void
  /** Told once, at release: one drag, one change. */
  onEnd(value: T): void
}

interface Drag<T> {
  readonly start: T
  readonly xPx: number
  readonly yPx: number
  value: T
  moved: boolean
}

/** A drag is meant from this far on (px); a mere tap changes nothing. */
const MEANT_PX = 3

/** Takes hold of a handle: captures the pointer, reports drafts, commits at release; Escape gives it up. */
export const useDrag = <T>(rules: DragRules<T>) => {
  const drag = useRef<Drag<T> | null>(null)
  const latest = useRef(rules)
  latest.current = rules
  useEffect(() => {
    const giveUp = (event: KeyboardEvent): void => {
      if (event.key !== 'Escape' || !drag.current) return
      drag.current = null
      latest.current.onDraft(null)
    }
    window.addEventListener('keydown', giveUp)
    return () => window.removeEventListener('keydown', giveUp)
  }, [])
  const end = (): void => {
    const done = drag.current
    drag.current = null
    latest.current.onDraft(null)
    if (done?.moved) latest.current.onEnd(done.value)
  }
  return (start: T) => ({
    onPointerDown: (event: PointerEvent<SVGElement>) => {
      event.currentTarget.setPointerCapture(event.pointerId)
      drag.current = { start, value: start, xPx: event.clientX, yPx: event.clientY, moved: false }
    },
    onPointerMove: (event: PointerEvent<SVGElement>) => {
      const now = drag.current
      if (!now) return
      const [dx, dy] = [event.clientX - now.xPx, event.clientY - now.yPx]
      now.moved ||= Math.hypot(dx, dy) >= MEANT_PX
      if (!now.moved) return
      now.value = latest.current.at(now.start, dx, dy)
      latest.current.onDraft(now.value)
    },
    onPointerUp: end,
    onPointerCancel: () => {
      drag.current = null
      latest.current.onDraft(null)
    },
  })
}
