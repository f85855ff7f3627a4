import { useCallback, useId } from 'react'
import { fixed } from '../../../main/contract/figures.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import type { Frame, RunShape } from '../../worker/protocol.ts'
import { type Running, useReading } from '../useLiveGrind.ts'
import { keepPlace, useViewing } from '../viewing.ts'
import { PlaceRange } from './PlaceRange.tsx'
import { placeFigures } from './place.ts'
import { usePlaceName } from './usePlaceName.ts'
import './place.css'

/** The place across the blade that is marked in all views, by keyboard; with what there is at it. */
export const PlaceSlider = ({ running }: { readonly running: Running }) => {
  const t = useTexts()
  const id = useId()
  const { inWords } = useFigures()
  const placeName = usePlaceName()
  const marked = useViewing((viewing) => viewing.markedUMm)
  const uMm = marked ?? 0
  const read = useCallback((frame: Frame, shape: RunShape) => placeFigures(frame, shape, uMm), [uMm])
  const { reliefMm, pressureNPerMm, inkLeftShare } = useReading(running, read)
  const words = t('views:place.words', {
    place: placeName(uMm),
    relief: inWords(reliefMm, 'mm', 2),
    pressure: fixed(pressureNPerMm, 1),
    share: Math.round(100 * inkLeftShare),
  })
  return (
    <div className="place-slider">
      <label htmlFor={id}>
        {t('views:place.label')}
        <PlaceRange id={id} widthMm={running.job.blade.widthMm} words={words} />
      </label>
      <span>{marked === null ? t('views:place.none') : words}</span>
      <button type="button" className="word" disabled={marked === null} onClick={() => keepPlace(null)}>
        {t('views:place.clear')}
      </button>
    </div>
  )
}
