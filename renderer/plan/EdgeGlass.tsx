import type { Report } from '../../geometry/report.ts'
import { Glass } from '../glass/Glass.tsx'
import { PredictedKey, WantedKey } from '../glass/Legend.tsx'
import { FigureText } from '../ui/FigureText.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { useWindowHeight } from '../ui/useWindowHeight.ts'
import { curveRoomPx } from './room.ts'

interface EdgeGlassProps {
  readonly report: Report
  readonly dot: 'left' | 'right'
}

/** The edge wanted, and predicted with the stops as they are set. */
export const EdgeGlass = ({ report, dot }: EdgeGlassProps) => {
  const t = useTexts()
  const words = useWords(report)
  const { plan, grind, job } = report
  const edges = { widthMm: job.blade.widthMm, wanted: plan, predicted: grind, measured: null }
  return (
    <Glass
      edges={edges}
      dot={dot}
      curvePx={curveRoomPx(useWindowHeight())}
      heading={t('plan:glass.heading')}
      label={t('plan:glass.label', { ...words })}
    >
      <div className="glass-wanted">
        <FigureText figure={useFigures().of('aim.reliefMm', plan.reliefMm)} size="far" name={t('plan:glass.relief')} />
      </div>
      <p className="glass-legend">
        <WantedKey /> <span className="wanted-word">{t('plan:glass.wanted')}</span>
        <br />
        <PredictedKey /> <span className="predicted-word">{t('plan:glass.predicted', { ...words })}</span>
      </p>
    </Glass>
  )
}

interface Words {
  readonly wanted: string
  readonly left: string
  readonly right: string
}

const useWords = ({ plan, grind }: Report): Words => {
  const { inWords } = useFigures()
  return {
    wanted: inWords(plan.reliefMm, 'mm', 2),
    left: inWords(grind.reliefLeftMm, 'mm', 2),
    right: inWords(grind.reliefRightMm, 'mm', 2),
  }
}
