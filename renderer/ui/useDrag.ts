import { type PointerEvent, useEffect, useRef } from 'react'

interface DragRules<T> {
  /** The value after the hand has gone so far (px) from where it took hold: the pointer's way, with Shift a tenth of it. */
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
  /** Where the pointer took hold, and where it was last. */
  readonly fromXPx: number
  readonly fromYPx: number
  atXPx: number
  atYPx: number
  /** How far the hand has gone. */
  dxPx: number
  dyPx: number
  value: T
  moved: boolean
}

/** A drag is meant from this far on (px); a mere tap changes nothing. */
const MEANT_PX = 3

/** With Shift held the pointer goes so much further than the hand: a pixel is more than a bar or a screw is set by. */
const FINE = 10

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
      const { pointerId, clientX: x, clientY: y } = event
      event.currentTarget.setPointerCapture(pointerId)
      const way = { fromXPx: x, fromYPx: y, atXPx: x, atYPx: y, dxPx: 0, dyPx: 0 }
      drag.current = { start, value: start, pointerId, moved: false, ...way }
    },
    onPointerMove: (event: PointerEvent<Element>) => {
      const now = of(event)
      if (!now) return
      follow(now, event)
      now.moved ||= Math.hypot(event.clientX - now.fromXPx, event.clientY - now.fromYPx) >= MEANT_PX
      if (!now.moved) return
      now.value = latest.current.at(now.start, now.dxPx, now.dyPx)
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

const follow = <T>(drag: Drag<T>, { clientX, clientY, shiftKey }: PointerEvent<Element>): void => {
  const share = shiftKey ? 1 / FINE : 1
  drag.dxPx += (clientX - drag.atXPx) * share
  drag.dyPx += (clientY - drag.atYPx) * share
  drag.atXPx = clientX
  drag.atYPx = clientY
}

const giveUp = <T>(drag: { current: Drag<T> | null }, rules: DragRules<T>): void => {
  if (!drag.current) return
  drag.current = null
  rules.onDraft(null)
  rules.onGiveUp?.()
}
