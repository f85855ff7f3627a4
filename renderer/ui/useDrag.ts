import { type PointerEvent, useEffect, useRef } from 'react'

interface DragRules<T> {
  /** The value after the pointer has gone so far (px) from where it took hold. */
  at(start: T, dxPx: number, dyPx: number): T
  /** Told on the way; null when the drag is over or given up. */
  onDraft(value: T | null): void
  /** Told once, at release: one drag, one change. */
  onEnd(value: T): void
  /** Told after Escape, or when the system took the pointer away. */
  onGiveUp?(): void
}

interface Drag<T> {
  readonly start: T
  readonly pointerId: number
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
    const onKey = (event: KeyboardEvent): void => {
      if (event.key === 'Escape') giveUp(drag, latest.current)
    }
    window.addEventListener('keydown', onKey)
    return () => window.removeEventListener('keydown', onKey)
  }, [])
  /** The drag of this pointer; a second finger drags nothing. */
  const of = ({ pointerId }: PointerEvent<Element>) => (drag.current?.pointerId === pointerId ? drag.current : null)
  return (start: T) => ({
    onPointerDown: (event: PointerEvent<Element>) => {
      if (drag.current) return
      const { pointerId, clientX: xPx, clientY: yPx } = event
      event.currentTarget.setPointerCapture(pointerId)
      drag.current = { start, value: start, pointerId, xPx, yPx, moved: false }
    },
    onPointerMove: (event: PointerEvent<Element>) => {
      const now = of(event)
      if (!now) return
      const [dx, dy] = [event.clientX - now.xPx, event.clientY - now.yPx]
      now.moved ||= Math.hypot(dx, dy) >= MEANT_PX
      if (!now.moved) return
      now.value = latest.current.at(now.start, dx, dy)
      latest.current.onDraft(now.value)
    },
    onPointerUp: (event: PointerEvent<Element>) => {
      const done = of(event)
      if (!done) return
      drag.current = null
      latest.current.onDraft(null)
      if (done.moved) latest.current.onEnd(done.value)
    },
    onPointerCancel: (event: PointerEvent<Element>) => {
      if (of(event)) giveUp(drag, latest.current)
    },
  })
}

const giveUp = <T>(drag: { current: Drag<T> | null }, rules: DragRules<T>): void => {
  if (!drag.current) return
  drag.current = null
  rules.onDraft(null)
  rules.onGiveUp?.()
}
