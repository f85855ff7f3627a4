import { useRef } from 'react'
import type { Report } from '../../geometry/report.ts'
import { FigureText } from '../ui/FigureText.tsx'
import { ScaleBar } from '../ui/ScaleBar.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { useFigures } from '../ui/useFigure.ts'
import { useWindowHeight } from '../ui/useWindowHeight.ts'
import { BARS_PX, type GlassLayout, glassLayout, lineOf } from './glassLayout.ts'
import { curveRoomPx } from './room.ts'
import { ScaleCaption } from './ScaleCaption.tsx'
import './edgeGlass.css'

interface EdgeGlassProps {
  readonly report: Report
  readonly dot: 'left' | 'right'
}

const BEFORE = { widthPx: 520, heightPx: 232 }
/** Narrower than this no curve can be read (px). */
const LEAST_WIDTH_PX = 240
const BAR_MOST_PX = 120

/** The glass: the edge magnified, wanted and predicted, back up at the wheel. */
export const EdgeGlass = ({ report, dot }: EdgeGlassProps) => {
  const t = useTexts()
  const words = useWords(report)
  const paper = useRef<HTMLDivElement>(null)
  const roomPx = Math.max(LEAST_WIDTH_PX, useBox(paper, BEFORE).widthPx)
  const layout = glassLayout(report, roomPx, curveRoomPx(useWindowHeight()))
  const label = t('plan:glass.label', { ...words })
  return (
    <figure className="plan-figure glass">
      <div className="glass-paper" ref={paper}>
        <svg className="drawing" width={roomPx} height={layout.heightPx} role="img" aria-label={label}>
          <Curves layout={layout} />
          <Sides layout={layout} dot={dot} />
          <ScaleBar xPx={roomPx - BARS_PX + 8} yPx={layout.topPx} factor={layout.depth} mostPx={BAR_MOST_PX} upright />
        </svg>
      </div>
      <Legend report={report} words={words} />
      <ScaleCaption heading={t('plan:glass.heading')} across={layout.across} depth={layout.depth} />
    </figure>
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

const DIAMOND_PX = 6
const DIAMOND = `l${DIAMOND_PX} ${DIAMOND_PX}l${-DIAMOND_PX} ${DIAMOND_PX}l${-DIAMOND_PX} ${-DIAMOND_PX}Z`

const Curves = ({ layout }: { readonly layout: GlassLayout }) => {
  const { leftPx, rightPx, topPx, floorPx, wanted, predicted, diamonds } = layout
  return (
    <>
      <path className="steel" d={`${lineOf(wanted)}V${floorPx}H${leftPx}Z`} />
      <path className="datum" d={`M${leftPx} ${topPx}H${rightPx}`} />
      <path className="wanted-line" d={lineOf(wanted)} />
      <path className="predicted-line" d={lineOf(predicted)} />
      {diamonds.map(([x, y]) => (
        <path key={x} className="diamond" d={`M${x} ${y - DIAMOND_PX}${DIAMOND}`} />
      ))}
    </>
  )
}

const Sides = ({ layout, dot }: { readonly layout: GlassLayout; readonly dot: 'left' | 'right' }) => {
  const t = useTexts()
  const { leftPx, rightPx, floorPx, heightPx } = layout
  const y = heightPx - 6
  return (
    <>
      <circle className="dot" cx={dot === 'left' ? leftPx + 14 : rightPx - 14} cy={floorPx - 14} r="6" />
      <text x={leftPx} y={y}>
        {t('common:side.left')}
      </text>
      <text x={(leftPx + rightPx) / 2} y={y} textAnchor="middle">
        {t('plan:glass.middle')}
      </text>
      <text x={rightPx} y={y} textAnchor="end">
        {t('common:side.right')}
      </text>
    </>
  )
}

const Legend = ({ report, words }: { readonly report: Report; readonly words: Words }) => {
  const t = useTexts()
  const relief = useFigures().of('aim.reliefMm', report.plan.reliefMm)
  return (
    <div className="glass-head">
      <FigureText figure={relief} size="far" name={t('plan:glass.relief')} />
      <p className="glass-legend">
        <svg width="36" height="12" aria-hidden="true">
          <path className="wanted-line" d="M0 6h36" />
          <path className="diamond" d="M18 1l5 5l-5 5l-5 -5Z" />
        </svg>{' '}
        <span className="wanted-word">{t('plan:glass.wanted')}</span>
        <br />
        <svg width="36" height="12" aria-hidden="true">
          <path className="predicted-line" d="M0 6h36" />
        </svg>{' '}
        <span className="predicted-word">{t('plan:glass.predicted', { ...words })}</span>
      </p>
    </div>
  )
}
