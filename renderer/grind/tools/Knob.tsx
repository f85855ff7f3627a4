import { type KeyboardEvent, type PointerEvent, type ReactNode, useRef } from 'react'
import { useDrag } from '../../ui/useDrag.ts'

interface KnobProps {
  readonly name: string
  readonly value: number
  readonly min: number
  readonly max: number
  /** One step of an arrow key; with Shift ten. */
  readonly step: number
  /** The value with its unit, as it is spoken. */
  readonly words: string
  /** Places that Page up and Page down go to, rising. */
  readonly jumps: readonly number[]
  /** The value after the pointer has gone so far from where it took hold. */
  readonly at: (start: number, dxPx: number, dyPx: number) => number
  readonly onHold?: (event: PointerEvent<SVGElement>) => void
  readonly onChange: (value: number) => void
  readonly children: ReactNode
}

type Move = (props: KnobProps, steps: number) => number

const SHIFT_STEPS = 10
/** Two places nearer than this are one (in the knob's own unit). */
const SAME = 1e-6

const up: Move = ({ value, step }, steps) => value + steps * step
const down: Move = ({ value, step }, steps) => value - steps * step

/** Where each key asks to go. */
const moves: Readonly<Record<string, Move>> = {
  ArrowRight: up,
  ArrowUp: up,
  ArrowLeft: down,
  ArrowDown: down,
  PageUp: ({ value, jumps }) => jumps.find((each) => each > value + SAME) ?? value,
  PageDown: ({ value, jumps }) => jumps.findLast((each) => each < value - SAME) ?? value,
  Home: ({ min }) => min,
  End: ({ max }) => max,
}

/** Part of a drawing that can be taken hold of, by pointer, touch or keys. */
export const Knob = (props: KnobProps) => {
  const { value, min, max, onChange } = props
  const begun = useRef(value)
  const within = (next: number): number => Math.min(Math.max(next, min), max)
  const drag = useDrag<number>({
    at: (start, dx, dy) => within(props.at(start, dx, dy)),
    onDraft: (draft) => onChange(draft ?? begun.current),
    onEnd: onChange,
  })(value)
  const key = (event: KeyboardEvent): void => {
    const move = moves[event.key]
    if (!move) return
    event.preventDefault()
    onChange(within(move(props, event.shiftKey ? SHIFT_STEPS : 1)))
  }
  return (
    <g
      role="slider"
      tabIndex={0}
      className="tool-knob"
      aria-label={props.name}
      aria-valuemin={min}
      aria-valuemax={max}
      aria-valuenow={value}
      aria-valuetext={props.words}
      onKeyDown={key}
      {...drag}
      onPointerDown={(event) => {
        begun.current = value
        props.onHold?.(event)
        drag.onPointerDown(event)
      }}
    >
      {props.children}
    </g>
  )
}
