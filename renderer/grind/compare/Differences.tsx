import type { TFunction } from 'i18next'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import type { Running } from '../useLiveGrind.ts'
import type { Other } from './comparing.ts'
import { SAME_EDGE_MM } from './deviation.ts'
import { jobRows, momentRows, otherDifferences, type Row } from './rows.ts'
import type { Pair } from './together.ts'
import { useOtherName } from './useNames.ts'
import { usePair } from './useTogether.ts'

interface DifferencesProps {
  readonly own: Running
  readonly other: Other
}

/** Both jobs in figures: a figure that is the same is said once. */
export const Differences = ({ own, other }: DifferencesProps) => {
  const t = useTexts()
  const figures = useFigures()
  const name = useOtherName()
  const pair = usePair(other)
  if (!pair) return <p role="status">{t('compare:starting')}</p>
  const words = { t, figures }
  const rows = [...momentRows(pair.own, pair.other, words), ...jobRows(own, other.running, words)]
  const further = otherDifferences(own.job, other.running.job)
  return (
    <div className="compare-differences">
      <p role="status">{togetherWords(pair, t)}</p>
      <DeviationLine pair={pair} />
      {further.length > 0 && (
        <p>{t('compare:further', { what: further.map((key) => t(`compare:field.${key}`)).join(', ') })}</p>
      )}
      <table>
        <thead>
          <tr>
            <th scope="col">{t('compare:figure')}</th>
            <th scope="col">{t('compare:this')}</th>
            <th scope="col">{name}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <Figures key={row.key} row={row} />
          ))}
        </tbody>
      </table>
    </div>
  )
}

const togetherWords = ({ own, other, shorter }: Pair, t: TFunction): string => {
  const sweeps = { own: Math.floor(own.sweep), other: Math.floor(other.sweep) }
  if (shorter) return t('compare:shorter', sweeps)
  return t(sweeps.own === sweeps.other ? 'compare:together' : 'compare:apart', sweeps)
}

const Figures = ({ row: { key, name, own, other } }: { readonly row: Row }) => {
  const t = useTexts()
  return (
    <tr data-row={key} data-same={own === other}>
      <th scope="row">{name}</th>
      {own === other ? (
        <td colSpan={2}>{t('compare:both', { figure: own })}</td>
      ) : (
        <>
          <td>{own}</td>
          <td>{other}</td>
        </>
      )}
    </tr>
  )
}

/** A place nearer to it than this is the middle (mm). */
const MIDDLE_MM = 0.05

const DeviationLine = ({ pair: { deviation } }: { readonly pair: Pair }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { byMm, atUMm } = deviation
  if (Math.abs(byMm) < SAME_EDGE_MM) return <p data-testid="deviation">{t('compare:deviation.none')}</p>
  const place = Math.abs(atUMm) < MIDDLE_MM ? 'middle' : atUMm < 0 ? 'left' : 'right'
  return (
    <p data-testid="deviation">
      {t(`compare:deviation.${byMm > 0 ? 'behind' : 'before'}`, {
        by: inWords(Math.abs(byMm), 'mm', 3),
        where: t(`compare:where.${place}`, { at: inWords(Math.abs(atUMm), 'mm', 1) }),
      })}
    </p>
  )
}
