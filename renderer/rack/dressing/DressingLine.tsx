import type { Station } from '../../../main/contract/entities.ts'
import type { Dressing } from '../../../main/contract/work.ts'
import { sayProblem } from '../../app/store.ts'
import { shortDate } from '../../ui/dates.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { removeDressing } from '../edits.ts'

interface DressingLineProps {
  readonly dressing: Dressing
  readonly station: Station
}

/** One line of a wheel's log. */
export const DressingLine = ({ dressing, station }: DressingLineProps) => {
  const t = useTexts()
  const figures = useFigures()
  const { kind, at, diameterMm, barMm, barMeasure, who, note } = dressing
  const day = shortDate(at)
  const bar = barMm === null ? '' : figures.inWords(barMm, 'mm', 1)
  const remove = async () => {
    const removed = await removeDressing(dressing, station.name)
    if (!removed.ok && removed.problems[0]) sayProblem(removed.problems[0])
  }
  return (
    <li>
      <span className="muted">{day}</span>
      <span>
        {t(`dressing:line.${kind}`, { diameter: figures.inWords(diameterMm, 'mm', 1) })}
        {bar !== '' && ` ${t('dressing:line.bar', { bar, measure: t(`common:barMeasure.${barMeasure}`) })}`}
        {who !== '' && <span className="muted"> {who}</span>}
        {note !== '' && ` ${note}`}
      </span>
      <button type="button" className="word" aria-label={t('dressing:removeOf', { day })} onClick={() => void remove()}>
        {t('dressing:remove')}
      </button>
    </li>
  )
}
