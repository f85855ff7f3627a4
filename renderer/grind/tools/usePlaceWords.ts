import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'

/** Nearer to the middle this is the middle (mm). */
const MIDDLE_MM = 0.05
/** Nearer to a corner this is the corner (mm). */
const CORNER_MM = 0.05

/** @returns a writer for places across a blade so wide, as a person says them */
export const usePlaceWords = (widthMm: number): ((uMm: number) => string) => {
  const t = useTexts()
  const { inWords } = useFigures()
  return (uMm) => {
    const side = uMm < 0 ? 'left' : 'right'
    if (Math.abs(uMm) < MIDDLE_MM) return t('tools:place.middle')
    if (Math.abs(uMm) > widthMm / 2 - CORNER_MM) return t(`tools:place.corner.${side}`)
    return t(`tools:place.off.${side}`, { off: inWords(Math.abs(uMm), 'mm', 1) })
  }
}
