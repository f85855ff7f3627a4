import type { Tool } from '../../main/contract/entities.ts'
import { useApp } from '../app/store.ts'
import { useAnswer } from '../app/useAnswer.ts'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'

/** How many grinds an iron has left, with its doubt and what that rests on; only where its length was measured. */
export const LifeLeft = ({ tool }: { readonly tool: Tool }) =>
  tool.lengthLeftMm === null ? null : <Life id={tool.id} lengthLeftMm={tool.lengthLeftMm} />

const Life = ({ id, lengthLeftMm }: { readonly id: string; readonly lengthLeftMm: number }) => {
  const t = useTexts()
  const figures = useFigures()
  const changes = useApp((app) => app.rackChanges)
  const life = useAnswer('tool.life', { id }, [lengthLeftMm, changes])
  if (life === undefined) return null
  if (life === null) return <p className="muted detail-life">{t('rack:life.unknown')}</p>
  const { grinds, from, to, perGrindMm, by, counted, lengthOn, takenSinceMm } = life
  return (
    <p className="detail-life">
      {t('rack:life.left', { count: grinds, from, to })}{' '}
      <span className="muted">
        {t(`rack:life.${by}`, { count: counted, each: figures.inWords(perGrindMm, 'mm', 2) })}{' '}
        {lengthOn !== null &&
          takenSinceMm > 0 &&
          t('rack:life.since', { day: shortDate(lengthOn), taken: figures.inWords(takenSinceMm, 'mm', 1) })}
      </span>
    </p>
  )
}
