import type { LearntGrind } from '../../main/contract/learnt.ts'
import { sayProblem } from '../app/store.ts'
import { countReading } from '../rack/edits.ts'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'

/** Every grind that could teach, newest first, with the key that lets it or does not. */
export const GrindTable = ({ grinds }: { readonly grinds: readonly LearntGrind[] }) => {
  const t = useTexts()
  const { unit } = useFigures().plain(0, 'mm', 2)
  return (
    <table className="learnt-table">
      <caption className="unseen">{t('learnt:table.caption')}</caption>
      <thead>
        <tr>
          <th scope="col">{t('learnt:table.iron')}</th>
          <th scope="col">{t('learnt:table.play', { unit })}</th>
          <th scope="col">{t('learnt:table.measured', { unit })}</th>
          <th scope="col">{t('learnt:table.model', { unit })}</th>
          <th scope="col">{t('learnt:table.standing')}</th>
        </tr>
      </thead>
      <tbody>
        {[...grinds].reverse().map((grind) => (
          <Row key={grind.lineId} grind={grind} />
        ))}
      </tbody>
    </table>
  )
}

const Row = ({ grind }: { readonly grind: LearntGrind }) => {
  const t = useTexts()
  const { plain } = useFigures()
  const { toolCode, toolName, at, freePlayMm, measuredReliefMm, modelReliefMm, standing } = grind
  const out = standing === 'excluded'
  const toggle = async () => {
    const done = await countReading({ id: grind.lineId, version: grind.version }, out ? 'yes' : 'no', toolName)
    if (!done.ok && done.problems[0]) sayProblem(done.problems[0])
  }
  const iron = `${toolCode}, ${shortDate(at)}`
  return (
    <tr data-standing={standing}>
      <th scope="row" title={toolName}>
        {iron}
      </th>
      <td>{plain(freePlayMm, 'mm', 2).text}</td>
      <td>{plain(measuredReliefMm, 'mm', 2).text}</td>
      <td>{plain(modelReliefMm, 'mm', 2).text}</td>
      <td>
        {t(`learnt:standing.${standing}`)}{' '}
        {(standing === 'used' || standing === 'outlier' || out) && (
          <button
            type="button"
            className="word"
            aria-label={t(out ? 'learnt:table.letInLabel' : 'learnt:table.leaveOutLabel', { iron })}
            onClick={() => void toggle()}
          >
            {t(out ? 'learnt:table.letIn' : 'learnt:table.leaveOut')}
          </button>
        )}
      </td>
    </tr>
  )
}
