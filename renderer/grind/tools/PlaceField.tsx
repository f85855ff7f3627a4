import { useId } from 'react'
import { useTexts } from '../../ui/texts.tsx'
import { useViewing } from '../viewing.ts'
import { PlaceRange } from '../views/PlaceRange.tsx'
import { usePlaceWords } from './usePlaceWords.ts'

/** @returns where the bevel is looked at in section: the place that is marked in all views, else the middle (mm) */
export const useSectionPlace = (): number => useViewing((viewing) => viewing.markedUMm) ?? 0

/** Sets where the bevel is looked at in section. */
export const PlaceField = ({ widthMm }: { readonly widthMm: number }) => {
  const t = useTexts()
  const id = useId()
  const words = usePlaceWords(widthMm)(useSectionPlace())
  return (
    <label className="tools-place" htmlFor={id}>
      <span className="muted">{t('tools:place.name')}</span>
      <PlaceRange id={id} widthMm={widthMm} words={words} />
      <span>{words}</span>
    </label>
  )
}
