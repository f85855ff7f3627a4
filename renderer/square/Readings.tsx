import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { changeSquare, type TakenReading } from './setting.ts'

interface ReadingsProps {
  readonly readings: readonly TakenReading[]
  readonly place: string
}

/** The readings in hand, each with a word to take it out. */
export const Readings = ({ readings, place }: ReadingsProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  if (readings.length === 0) return null
  return (
    <>
      <h3>{t('square:readings.heading')}</h3>
      <ol className="square-readings">
        {readings.map((reading, i) => (
          <li key={reading.id}>
            {t(`square:readings.${reading.otherGapMm === null ? 'line' : 'bothSides'}`, {
              gap: inWords(reading.gapMm, 'mm', 2),
              other: inWords(reading.otherGapMm ?? 0, 'mm', 2),
              over: inWords(reading.overMm, 'mm', 0),
              skew: inWords(reading.skewDeg, 'deg', 2),
              bevel: inWords(reading.bevelDeg, 'deg', 0),
              clamping: reading.clamping,
            })}{' '}
            {reading.dressed && `${t('square:readings.dressed')} `}
            {reading.logId !== null && `${t('square:readings.kept')} `}
            <button
              type="button"
              className="word"
              aria-label={t('square:readings.removeLabel', { row: i + 1 })}
              onClick={() => changeSquare(place, { readings: readings.filter(({ id }) => id !== reading.id) })}
            >
              {t('square:readings.remove')}
            </button>
          </li>
        ))}
      </ol>
    </>
  )
}
