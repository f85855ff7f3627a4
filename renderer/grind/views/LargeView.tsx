import { type ReactNode, useRef } from 'react'
import { useActions } from '../../app/actions.ts'
import { useSize } from '../useScreen.ts'
import { OUTSIDE_PX } from '../Views.tsx'
import { setLarge, type ViewName } from '../viewing.ts'
import { carryFocus, type Room } from './room.ts'
import './large.css'

interface LargeViewProps {
  readonly view: ViewName
  readonly children: (room: Room) => ReactNode
}

/** Head of the view (px). */
const HEAD_PX = 34
/** Narrower than this no curve can be read (px). */
const LEAST_PX = 120
/** A view in the model's place, until its key or Escape gives that back. */
export const LargeView = ({ view, children }: LargeViewProps) => {
  const box = useRef<HTMLDivElement>(null)
  const size = useSize(box)
  useActions({
    modelBack: () => {
      carryFocus(view)
      setLarge(null)
    },
  })
  return (
    <div className="grind-large" ref={box}>
      {size &&
        children({
          plotPx: Math.max(size.widthPx - OUTSIDE_PX, LEAST_PX),
          heightPx: Math.max(size.heightPx - HEAD_PX, LEAST_PX),
        })}
    </div>
  )
}
