import type { Report } from '../../geometry/report.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { Glass } from '../glass/Glass.tsx'
import { MeasuredKey, PredictedKey, WantedKey } from '../glass/Legend.tsx'
import { shortDate } from '../ui/dates.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { useWindowHeight } from '../ui/useWindowHeight.ts'
import type { Shown } from './shown.ts'
import { wantedOf } from './wanted.ts'

interface MeasuredGlassProps {
  readonly tool: Tool
  /** Null: the job cannot be worked out; what is wanted is then the tool's. */
  readonly report: Report | null
  readonly shown: Shown | null
}

/** Height of the window that everything on Measure but the curve takes (px). */
const TAKEN_PX = 660
/** Least and most height of the curve (px): below, its shape is lost; above, it is no clearer. */
const LEAST_PX = 168
const MOST_PX = 300

/** The edge measured, over the one wanted and the one predicted. */
export const MeasuredGlass = ({ tool, report, shown }: MeasuredGlassProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { widthMm } = tool
  const wanted = wantedOf(tool, report)
  const measured = shown?.curve ?? null
  const length = (mm: number) => inWords(mm, 'mm', 2)
  const predicted = report && { left: length(report.grind.reliefLeftMm), right: length(report.grind.reliefRightMm) }
  const label = t('measure:glass.label', {
    wanted: length(wanted.reliefMm),
    predicted: predicted ? t('measure:glass.labelPredicted', predicted) : '',
    measured: shown
      ? t('measure:glass.labelMeasured', { relief: length(shown.edge.reliefMm) })
      : t('measure:glass.labelNone'),
  })
  const curvePx = Math.min(MOST_PX, Math.max(LEAST_PX, useWindowHeight() - TAKEN_PX))
  return (
    <Glass
      edges={{ widthMm, wanted, predicted: report?.grind ?? null, measured }}
      dot={tool.dotCorner}
      curvePx={curvePx}
      heading={t('measure:glass.heading')}
      label={label}
    >
      <ul className="measured-legend">
        <MeasuredWord shown={shown} taken={measured?.taken === true && measured.line !== null} />
        <li>
          <WantedKey />{' '}
          <span className="wanted-word">{t('measure:glass.wanted', { relief: length(wanted.reliefMm) })}</span>
        </li>
        {predicted && (
          <li>
            <PredictedKey /> <span className="predicted-word">{t('measure:glass.predicted', predicted)}</span>
            {report?.learnt && (
              <>
                <br />
                <span className="muted">
                  {t('measure:glass.learnt', {
                    relief: length(report.learnt.reliefMm),
                    error: length(report.learnt.standardErrorMm),
                  })}
                </span>
              </>
            )}
          </li>
        )}
      </ul>
    </Glass>
  )
}

const MeasuredWord = ({ shown, taken }: { readonly shown: Shown | null; readonly taken: boolean }) => {
  const t = useTexts()
  if (!shown) return <li className="muted">{t('measure:glass.none')}</li>
  const { line } = shown
  const word = t(`measure:glass.measured.${line?.stage ?? 'now'}`, { date: line ? shortDate(line.at) : '' })
  return (
    <li>
      <MeasuredKey /> <span className="measured-word">{word}</span>
      <br />
      <span className="muted">{t(`measure:glass.whisker.${shown.method}`)}</span>
      {taken && (
        <>
          <br />
          <span className="muted">{t('measure:glass.taken')}</span>
        </>
      )}
    </li>
  )
}
