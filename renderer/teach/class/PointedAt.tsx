import type { HTMLAttributes, PointerEvent } from 'react'
import { show, useShowing } from './showing.ts'

/** A picture in which the teacher's pointer is shown to the class, as long as there is one. */
export const PointedAt = ({ children, ...div }: HTMLAttributes<HTMLDivElement>) => {
  const here = useShowing((showing) => showing.here)
  const point = ({ clientX, clientY, currentTarget }: PointerEvent): void => {
    const box = currentTarget.getBoundingClientRect()
    show({ pointer: [(clientX - box.left) / box.width, (clientY - box.top) / box.height] })
  }
  return (
    <div
      {...div}
      onPointerMove={here ? point : undefined}
      onPointerLeave={here ? () => show({ pointer: null }) : undefined}
    >
      {children}
    </div>
  )
}
