import { keepPlace, useViewing } from '../viewing.ts'
import { PLACE_STEP_MM } from './place.ts'

interface PlaceRangeProps {
  readonly id: string
  readonly widthMm: number
  /** What there is at the place. */
  readonly words: string
}

/** Sets the place across the blade that is marked in all views. */
export const PlaceRange = ({ id, widthMm, words }: PlaceRangeProps) => {
  const uMm = useViewing((viewing) => viewing.markedUMm) ?? 0
  const mostMm = Math.floor(widthMm / 2 / PLACE_STEP_MM) * PLACE_STEP_MM
  return (
    <input
      id={id}
      type="range"
      min={-mostMm}
      max={mostMm}
      step={PLACE_STEP_MM}
      value={uMm}
      aria-valuetext={words}
      onChange={(event) => keepPlace(Number(event.target.value))}
    />
  )
}
