import { useTexts } from '../../ui/texts.tsx'
import { useViewing } from '../viewing.ts'
import { useToolbox } from './toolbox.ts'
import { usePlaceWords } from './usePlaceWords.ts'

/** One step of the place across, of the half width. */
const STEP_SHARE = 0.05

/** @returns where the bevel is looked at in section: where the pointer is in another view, else where it was set (mm) */
export const useSectionPlace = (widthMm: number): number => {
  const hoverUMm = useViewing((viewing) => viewing.hoverUMm)
  const share = useToolbox((box) => box.sectionShare)
  return hoverUMm ?? (share * widthMm) / 2
}

/** Sets where the bevel is looked at in section. */
export const PlaceField = ({ widthMm }: { readonly widthMm: number }) => {
  const t = useTexts()
  const share = useToolbox((box) => box.sectionShare)
  const placeWords = usePlaceWords(widthMm)
  const words = placeWords(useSectionPlace(widthMm))
  return (
    <label className="tools-place">
      <span className="muted">{t('tools:place.name')}</span>
      <input
        type="range"
        min={-1}
        max={1}
        step={STEP_SHARE}
        value={share}
        aria-valuetext={words}
        onChange={(event) => useToolbox.setState({ sectionShare: Number(event.target.value) })}
      />
      <span>{words}</span>
    </label>
  )
}
