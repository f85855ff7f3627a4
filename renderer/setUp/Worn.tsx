import { useState } from 'react'
import { measureWheel } from '../app/measureWheel.ts'
import { useApp } from '../app/store.ts'
import { FigureField } from '../ui/FigureField.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import type { Standing } from './SetUpScreen.tsx'
import { useTurns } from './useTurns.ts'
import { type AfterWear, afterWear } from './wear.ts'

/** What a dressing or a season takes, as a first thought (mm of diameter). */
const FIRST_LOSS_MM = 2

/** After wear or dressing: what the bevel becomes with the bar left or set to its old gap, and how far to move for the old bevel. */
export const Worn = ({ standing: { job, figures } }: { readonly standing: Standing }) => {
  const t = useTexts()
  const { inWords, plain } = useFigures()
  const turns = useTurns('setUp:worn.turns')
  const station = useApp((app) => app.station)
  const [typedMm, setTypedMm] = useState<number | null>(null)
  const wheelDiameterMm = typedMm ?? job.station.wheelDiameterMm - FIRST_LOSS_MM
  const after = afterWear(job, figures, wheelDiameterMm)
  const change = (deg: number | null) => {
    if (deg === null) return t('setUp:worn.none')
    const by = deg - figures.bevelAngleDeg
    const sign = by < 0 ? '' : '+'
    return t('setUp:worn.bevel', { bevel: inWords(deg, 'deg', 1), by: `${sign}${plain(by, 'deg', 2).text}` })
  }
  return (
    <section className="worn" aria-label={t('setUp:worn.heading')}>
      <h2>{t('setUp:worn.heading')}</h2>
      <p>{turns(-figures.bevelPerWheelDiameterDegPerMm)}</p>
      <FigureField
        quantity="station.wheelDiameterMm"
        label={t('setUp:worn.diameter')}
        value={wheelDiameterMm}
        onCommit={(value) => setTypedMm(value)}
      />
      <dl>
        <dt>{t('setUp:worn.left')}</dt>
        <dd>{change(after.leftDeg)}</dd>
        <dt>{t('setUp:worn.sameGap')}</dt>
        <dd>{change(after.sameGapDeg)}</dd>
      </dl>
      <Move after={after} />
      {station && wheelDiameterMm !== station.wheelDiameterMm && (
        <button type="button" className="key" onClick={() => void measureWheel(station, wheelDiameterMm)}>
          {t('setUp:worn.take')}
        </button>
      )}
    </section>
  )
}

const Move = ({ after }: { readonly after: AfterWear }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  if (after.barMovesMm === null) return null
  const way = after.barMovesMm < 0 ? 'nearer' : 'further'
  return (
    <p>
      {t(`setUp:worn.move.${way}`, {
        bar: inWords(Math.abs(after.barMovesMm), 'mm', 1),
        gap: inWords(after.gapMm ?? 0, 'mm', 1),
      })}{' '}
      {after.projectionMovesMm !== null &&
        t(`setUp:worn.or.${after.projectionMovesMm < 0 ? 'less' : 'more'}`, {
          projection: inWords(Math.abs(after.projectionMovesMm), 'mm', 1),
        })}
    </p>
  )
}
