import { FigureField } from '../ui/FigureField.tsx'
import { useTexts } from '../ui/texts.tsx'
import { changeSheet, noPoint, type PointDraft } from './bench.ts'
import type { EntriesProps } from './Entries.tsx'
import { LastTime } from './LastTime.tsx'
import './ways.css'

/** Most rows that anyone types; a file takes more. */
const MOST_ROWS = 25

/** Gaps at places across, one pair a row; a row more is there as soon as the last is begun. */
export const PointsEntry = ({ tool, sheet, newest }: EntriesProps) => {
  const t = useTexts()
  const { points } = sheet
  const set = (next: readonly PointDraft[]) => {
    const last = next.at(-1)
    const begun = last && (last.uMm !== null || last.gapMm !== null)
    changeSheet(tool.id, { points: begun && next.length < MOST_ROWS ? [...next, noPoint] : next })
  }
  const change = (i: number, patch: Partial<PointDraft>) =>
    set(points.map((point, k) => (k === i ? { ...point, ...patch } : point)))
  return (
    <div className="entries-points">
      <p className="muted">{t('measure:points.how')}</p>
      <LastTime tool={tool} newest={newest} />
      <ol>
        {points.map((point, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place in the list
          <li key={i}>
            <FigureField
              quantity="measure.placeMm"
              size="small"
              label={t('measure:points.place', { row: i + 1 })}
              value={point.uMm}
              allowEmpty
              range={{ min: -tool.widthMm / 2, max: tool.widthMm / 2 }}
              onCommit={(uMm) => change(i, { uMm })}
            />
            <FigureField
              quantity="measure.leafMm"
              size="small"
              label={t('measure:points.gap', { row: i + 1 })}
              value={point.gapMm}
              allowEmpty
              onCommit={(gapMm) => change(i, { gapMm })}
            />
            {points.length > 3 && (
              <button
                type="button"
                className="word"
                aria-label={t('measure:points.removeLabel', { row: i + 1 })}
                onClick={() => set(points.filter((_, k) => k !== i))}
              >
                {t('measure:points.remove')}
              </button>
            )}
          </li>
        ))}
      </ol>
    </div>
  )
}
