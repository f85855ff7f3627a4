import type { StocktakeStanding } from '../../main/contract/stocktake.ts'
import { useTexts } from '../ui/texts.tsx'

/** Tools not seen since the stocktake began, by place. */
export const Missing = ({ standing: { missing, missingTotal } }: { readonly standing: StocktakeStanding }) => {
  const t = useTexts()
  if (missing.length === 0) return null
  return (
    <>
      <ul className="stocktake-list">
        {missing.map(({ id, code, name, place }) => (
          <li key={id}>
            <span className="stocktake-code">{code}</span>
            <span>{name}</span>
            <span className="muted">{place || t('stocktake:noPlace')}</span>
          </li>
        ))}
      </ul>
      {missingTotal > missing.length && (
        <p className="muted">{t('stocktake:andMore', { count: missingTotal - missing.length })}</p>
      )}
    </>
  )
}
