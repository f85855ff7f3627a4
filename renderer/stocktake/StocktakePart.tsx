import { useState } from 'react'
import { placePath } from '../../main/contract/placePath.ts'
import type { StocktakeStanding } from '../../main/contract/stocktake.ts'
import { sayProblem, useApp } from '../app/store.ts'
import { beginStocktake } from '../app/storeStocktake.ts'
import { momentText } from '../ui/dates.ts'
import { SelectEntry } from '../ui/Entry.tsx'
import { useTexts } from '../ui/texts.tsx'
import { GoingRound } from './GoingRound.tsx'
import { Missing } from './Missing.tsx'
import { standIn, useStocktake } from './useStocktake.ts'
import './stocktake.css'

/** Going round to see what is there: begun, gone on with, ended; what it found missing. */
export const StocktakePart = () => {
  const standing = useStocktake()
  if (standing === undefined) return null
  if (standing !== null && standing.stocktake.endedAt === null)
    return (
      <div className="stocktake">
        <GoingRound standing={standing} />
      </div>
    )
  return (
    <div className="stocktake">
      <Begin />
      {standing && <Ended standing={standing} />}
    </div>
  )
}

const Begin = () => {
  const t = useTexts()
  const places = useApp((app) => app.places)
  const [placeId, setPlaceId] = useState('')
  const begin = async () => {
    const label = placeId === '' ? t('stocktake:whole') : placePath(places, placeId)
    const begun = await beginStocktake(placeId === '' ? null : placeId, label)
    if (!begun.ok) return begun.problems[0] && sayProblem(begun.problems[0])
    standIn(placeId)
  }
  return (
    <section aria-label={t('stocktake:beginning')}>
      <p className="sentence">{t('stocktake:how')}</p>
      <div className="stocktake-begin">
        <SelectEntry
          name={t('stocktake:of')}
          value={placeId}
          options={[
            { value: '', name: t('stocktake:whole') },
            ...places.map(({ id }) => ({ value: id, name: placePath(places, id) })),
          ]}
          onChange={setPlaceId}
        />
        <button type="button" className="key key-main" onClick={() => void begin()}>
          {t('stocktake:begin')}
        </button>
      </div>
    </section>
  )
}

/** What the one before found. */
const Ended = ({ standing }: { readonly standing: StocktakeStanding }) => {
  const t = useTexts()
  const { stocktake, within, expected, missingTotal } = standing
  return (
    <section className="stocktake-ended" aria-label={t('stocktake:last')}>
      <h2>{t('stocktake:lastOf', { where: within || t('stocktake:whole'), at: momentText(stocktake.startedAt) })}</h2>
      <p>
        {t('stocktake:seen', { count: expected - missingTotal, expected })}{' '}
        {missingTotal > 0 ? t('stocktake:missing', { count: missingTotal }) : t('stocktake:nothingMissing')}
      </p>
      <Missing standing={standing} />
    </section>
  )
}
