import { useCallback, useMemo, useState } from 'react'
import { type Drawing, drawingOf } from '../scene/NoPicture.tsx'

/** The state of the three-dimensional picture. */
export interface PictureState {
  readonly drawing: Drawing
  /** The graphics were taken away and are not yet back. */
  readonly lost: boolean
  /** Counts up with every new try: a picture is made afresh for each. */
  readonly attempt: number
  readonly again: () => void
  /** To be told of graphics lost (true) and given back (false). */
  readonly onLost: (lost: boolean) => void
}

/** Follows the graphics through loss and return: given back, the picture is made afresh, as is all that stood in their memory. */
export const usePicture = (): PictureState => {
  const [attempt, setAttempt] = useState(0)
  const [lost, setLost] = useState(false)
  const drawing = useMemo(() => drawingOf(attempt > 0), [attempt])
  const again = useCallback(() => {
    setLost(false)
    setAttempt((count) => count + 1)
  }, [])
  const onLost = useCallback((now: boolean) => (now ? setLost(true) : again()), [again])
  return { drawing, lost, attempt, again, onLost }
}
