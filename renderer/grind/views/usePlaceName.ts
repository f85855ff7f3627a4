import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'

/** @returns the writer of a place across the blade: `12.0 mm right of the middle` */
export const usePlaceName = (): ((uMm: number) => string) => {
  const t = useTexts()
  const { inWords } = useFigures()
  return (uMm) =>
    uMm === 0
      ? t('views:place.middle')
      : t(uMm < 0 ? 'views:place.left' : 'views:place.right', { off: inWords(Math.abs(uMm), 'mm', 1) })
}
