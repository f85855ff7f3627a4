import type { PlanReport } from '../../geometry/report.ts'
import { textScale } from '../ui/textScale.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import type { CurveScale } from './curves.ts'
import { endPlaces, LINE_PX } from './endPlaces.ts'
import { reliefSizePx } from './glassScale.ts'
import type { Moment } from './useLiveGrind.ts'

interface EndLabelsProps {
  /** What the edge is called; left out: it is the one now. */
  readonly nowName?: string | undefined
  readonly moment: Moment
  readonly plan: PlanReport | null
  readonly scale: CurveScale
  readonly plotPx: number
  readonly heightPx: number
}

/** Names at the right ends of the curves, kept apart. */
export const EndLabels = ({ nowName, moment, plan, scale, plotPx, heightPx }: EndLabelsProps) => {
  const t = useTexts()
  const { plain } = useFigures()
  const linePx = LINE_PX * textScale()
  const baseOf = (mm: number) => scale.topPx + mm * scale.depthPxPerMm + 5
  const places = endPlaces(baseOf(moment.reliefRightMm), plan && baseOf(plan.reliefMm), heightPx, linePx)
  return (
    <g>
      <path
        className="grind-leader"
        d={`M${plotPx + 2} ${baseOf(moment.reliefRightMm) - 5}L${plotPx + 10} ${places.nowYPx - 5}`}
      />
      <text className="end-now" x={plotPx + 12} y={places.nowYPx}>
        {nowName ?? t('grind:glass.now')}
      </text>
      {plan && (
        <text className="end-wanted" x={plotPx + 12} y={places.wantedYPx}>
          {t('grind:glass.wanted')}
          <tspan className="end-figure" x={plotPx + 12} dy={linePx}>
            {plain(plan.reliefMm, 'mm', 2).text}
          </tspan>
        </text>
      )}
    </g>
  )
}

/** Room for the figures and their words, down to the plot's end (px). */
const FIGURES_PX = 104

interface ReliefFiguresProps {
  readonly moment: Moment
  readonly plotPx: number
  readonly topPx: number
}

/** The two figures that everything is about. */
export const ReliefFigures = ({ moment, plotPx, topPx }: ReliefFiguresProps) => {
  const t = useTexts()
  const { plain } = useFigures()
  const [left, right] = [plain(moment.reliefLeftMm, 'mm', 2), plain(moment.reliefRightMm, 'mm', 2)]
  const scale = textScale()
  const characters = Math.max(left.text.length, right.text.length)
  const sizePx = reliefSizePx(plotPx / scale, characters, FIGURES_PX / scale)
  return (
    <dl className="relief-figures as-it-lies" style={{ top: topPx, width: plotPx, fontSize: `${sizePx / 16}rem` }}>
      <div>
        <dd data-testid="relief-left">{left.text}</dd>
        <dt>{t('grind:glass.reliefLeft', { unit: left.unit })}</dt>
      </div>
      <div>
        <dd data-testid="relief-right">{right.text}</dd>
        <dt>{t('grind:glass.reliefRight', { unit: right.unit })}</dt>
      </div>
    </dl>
  )
}
