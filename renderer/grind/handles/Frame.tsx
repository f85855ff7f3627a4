import { type KeyboardEvent, type PointerEvent, type ReactNode, useRef, useState } from 'react'
import { useTexts } from '../../ui/texts.tsx'
import { HandleField } from './HandleField.tsx'
import type { Told } from './kind.ts'
import { atLimit, type Range } from './range.ts'
import './handles.css'

interface FrameProps {
  readonly id: string
  readonly name: string
  readonly hint: string
  readonly cursor: string
  readonly value: number
  readonly range: Range
  readonly told: Told
  /** It is being moved: the value is shown beside it. */
  readonly held: boolean
  readonly notch?: boolean
  /** What takes typing, opened by Enter; it calls back when it is done with. */
  readonly field?: (onDone: () => void) => ReactNode
  readonly drag: {
    onPointerDown(event: PointerEvent<Element>): void
    onPointerMove(event: PointerEvent<Element>): void
    onPointerUp(event: PointerEvent<Element>): void
    onPointerCancel(event: PointerEvent<Element>): void
  }
  /** @returns whether the key did something here */
  readonly onKey: (event: KeyboardEvent) => boolean
  readonly onLeave: () => void
}

/** Decimals that are told of a value; what follows is dust of the reckoning. */
const TOLD_DECIMALS = 3

/** What every handle has: a ring to take hold of, its value beside it, keys, and a field. */
export const Frame = (props: FrameProps) => {
  const { id, name, range, value, told, held, field } = props
  const t = useTexts()
  const ring = useRef<HTMLDivElement>(null)
  const [typing, setTyping] = useState(false)
  const limit = atLimit(value, range)
  const said = [told.value, told.follows, limit && t('handles:limit')].filter(Boolean).join(', ')
  const key = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    const opens = event.key === 'Enter' && field !== undefined
    if (opens) setTyping(true)
    if (opens || props.onKey(event)) event.preventDefault()
  }
  const done = (): void => {
    setTyping(false)
    ring.current?.focus({ preventScroll: true })
  }
  return (
    <div className="handle" data-handle={id} data-held={held} data-limit={limit} data-notch={props.notch ?? false}>
      <div
        ref={ring}
        className="handle-hold"
        style={{ cursor: props.cursor }}
        role="slider"
        tabIndex={0}
        title={props.hint}
        aria-label={name}
        aria-valuenow={Number(value.toFixed(TOLD_DECIMALS))}
        aria-valuemin={range.min}
        aria-valuemax={range.max}
        aria-valuetext={said}
        {...props.drag}
        onPointerDown={(event) => {
          event.currentTarget.focus({ preventScroll: true })
          props.drag.onPointerDown(event)
        }}
        onKeyDown={key}
        onBlur={props.onLeave}
      />
      {!typing && (
        <span className="handle-value" aria-hidden="true">
          <strong>{told.value}</strong>
          {told.follows && <span>{told.follows}</span>}
          {limit && <span>{t('handles:limit')}</span>}
        </span>
      )}
      {typing && field && <HandleField onDone={done}>{field(done)}</HandleField>}
    </div>
  )
}
