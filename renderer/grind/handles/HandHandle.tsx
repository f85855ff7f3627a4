import { type KeyboardEvent, useRef, useState } from 'react'
import { useTexts } from '../../ui/texts.tsx'
import { useDrag } from '../../ui/useDrag.ts'
import { useFigures } from '../../ui/useFigure.ts'
import type { Moment, Running } from '../useLiveGrind.ts'
import { type Axis, alongMm } from './axis.ts'
import { Frame } from './Frame.tsx'
import { draggedPlaceMm, grindTo, handRange, handTold, shareOf } from './hand.ts'
import { atLimit, keyed, snapped } from './range.ts'

interface HandHandleProps {
  readonly running: Running
  readonly moment: Moment
  /** The line along the edge as it lies in the picture now. */
  readonly edge: () => Axis
}

/** The blade in the hand: dragged across, it grinds where the hand is, for as long as it is held. */
export const HandHandle = ({ running, moment, edge }: HandHandleProps) => {
  const { job, live } = running
  const t = useTexts()
  const figures = useFigures()
  const [heldMm, setHeldMm] = useState<number | null>(null)
  // The line along the edge as it lay when it was taken hold of.
  const took = useRef(edge)
  const range = handRange(job)
  const placeMm = snapped(heldMm ?? moment.loadPlaceMm, range)
  const drag = useDrag<number>({
    at: (fromMm, dxPx, dyPx) => snapped(draggedPlaceMm(job, fromMm, alongMm(took.current(), dxPx, dyPx)), range),
    onDraft: (mm) => {
      setHeldMm(mm)
      if (mm !== null) live.hold(shareOf(job, mm))
    },
    // Letting go keeps what was ground; the panel below says what can be done with it.
    onEnd: () => live.release(),
    onGiveUp: () => live.giveUp(),
  })(placeMm)
  const key = ({ key: pressed, shiftKey }: KeyboardEvent): boolean => {
    const next = pressed === ' ' ? placeMm : keyed(pressed, shiftKey, placeMm, range)
    if (next !== null) grindTo(live, job, next)
    return next !== null
  }
  return (
    <Frame
      id="hand"
      name={t('handles:hand.name')}
      hint={t('handles:hint.hand')}
      cursor={heldMm === null ? 'grab' : 'grabbing'}
      value={placeMm}
      range={range}
      told={handTold(placeMm, t, figures)}
      held={heldMm !== null}
      notch={heldMm !== null && atLimit(placeMm, range)}
      drag={{
        ...drag,
        onPointerDown: (event) => {
          const axis = edge()
          took.current = () => axis
          drag.onPointerDown(event)
        },
      }}
      onKey={key}
      onLeave={() => undefined}
    />
  )
}
