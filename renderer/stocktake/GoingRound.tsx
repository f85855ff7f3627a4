import { failed, ok, problem, type Result } from '../../geometry/result.ts'
import type { FoundByCode } from '../../main/contract/labels.ts'
import { placePath } from '../../main/contract/placePath.ts'
import type { StocktakeStanding } from '../../main/contract/stocktake.ts'
import { say, sayProblem, useApp } from '../app/store.ts'
import { endStocktake, seeTool } from '../app/storeStocktake.ts'
import { CodeEntry } from '../scan/CodeEntry.tsx'
import { SelectEntry } from '../ui/Entry.tsx'
import { useTexts } from '../ui/texts.tsx'
import { Missing } from './Missing.tsx'
import { SeenLine } from './SeenLine.tsx'
import { standIn, useHere } from './useStocktake.ts'

/** A stocktake that goes on: where one stands, one code after another, what was seen and what was not yet. */
export const GoingRound = ({ standing }: { readonly standing: StocktakeStanding }) => {
  const t = useTexts()
  const places = useApp((app) => app.places)
  const here = useHere(({ placeId }) => (places.some(({ id }) => id === placeId) ? placeId : ''))
  const { stocktake, within, expected, lent, seen, seenTotal, missingTotal } = standing
  const take = async (found: FoundByCode): Promise<Result<unknown>> => {
    if (found.noun === 'tool') return seeTool(stocktake, found, here === '' ? null : here)
    if (found.noun !== 'place') return failed(problem('codeNoTool', '', { code: found.code }))
    standIn(found.id)
    say('stocktake:stoodIn', { place: placePath(places, found.id) })
    return ok(null)
  }
  const end = async () => {
    const ended = await endStocktake(stocktake)
    if (!ended.ok && ended.problems[0]) sayProblem(ended.problems[0])
  }
  return (
    <>
      <p className="sentence">
        {t('stocktake:going', { where: within || t('stocktake:whole') })}{' '}
        {t('stocktake:seen', { count: expected - missingTotal, expected })}{' '}
        {lent > 0 && t('stocktake:lent', { count: lent })}
      </p>
      <div className="stocktake-begin">
        <CodeEntry name={t('stocktake:code')} action={t('stocktake:see')} onFound={take} camera />
        <SelectEntry
          name={t('stocktake:here')}
          value={here}
          options={[
            { value: '', name: t('stocktake:notSaid') },
            ...places.map(({ id }) => ({ value: id, name: placePath(places, id) })),
          ]}
          onChange={standIn}
        />
        <button type="button" className="key" onClick={() => void end()}>
          {t('stocktake:end')}
        </button>
      </div>
      <div className="stocktake-both">
        <section aria-label={t('stocktake:seenHeading')}>
          <h2>{t('stocktake:seenHeading')}</h2>
          {seen.length === 0 && <p className="muted">{t('stocktake:noneSeen')}</p>}
          <ul className="stocktake-list">
            {seen.map((each) => (
              <SeenLine key={each.sighting.id} seen={each} />
            ))}
          </ul>
          {seenTotal > seen.length && (
            <p className="muted">{t('stocktake:andMore', { count: seenTotal - seen.length })}</p>
          )}
        </section>
        <section aria-label={t('stocktake:missingHeading')}>
          <h2>{t('stocktake:missingHeading')}</h2>
          {missingTotal === 0 && <p>{t('stocktake:nothingMissing')}</p>}
          <Missing standing={standing} />
        </section>
      </div>
    </>
  )
}
