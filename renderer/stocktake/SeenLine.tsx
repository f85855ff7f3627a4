import type { Result } from '../../geometry/result.ts'
import type { SeenTool } from '../../main/contract/stocktake.ts'
import { sayProblem } from '../app/store.ts'
import { moveTool } from '../app/storeStocktake.ts'
import { giveBack } from '../rack/edits.ts'
import { useTexts } from '../ui/texts.tsx'

const orSay = async (doing: Promise<Result<unknown>>): Promise<void> => {
  const done = await doing
  if (!done.ok && done.problems[0]) sayProblem(done.problems[0])
}

/** A tool that was seen: where it was expected, and what to do where it was found elsewhere or is lent by the book. */
export const SeenLine = ({ seen: { tool, sighting, foundIn } }: { readonly seen: SeenTool }) => {
  const t = useTexts()
  const { code, name, place, holder } = tool
  const { placeId } = sighting
  const where = place || t('stocktake:noPlace')
  return (
    <li>
      <span className="stocktake-code">{code}</span>
      <span>{name}</span>
      <span className="muted">{foundIn === '' ? where : t('stocktake:foundIn', { place: foundIn, where })}</span>
      {foundIn !== '' && placeId !== null && (
        <button
          type="button"
          className="word"
          aria-label={t('stocktake:moveOf', { code, place: foundIn })}
          onClick={() => void orSay(moveTool(tool.id, placeId, name))}
        >
          {t('stocktake:move', { place: foundIn })}
        </button>
      )}
      {holder !== '' && (
        <>
          <span>{t('stocktake:hasIt', { holder })}</span>
          <button type="button" className="word" onClick={() => void orSay(giveBack(tool))}>
            {t('rack:quick.back', { holder })}
          </button>
        </>
      )}
    </li>
  )
}
