import { useRef } from 'react'
import type { Report } from '../../geometry/report.ts'
import { FigureText } from '../ui/FigureText.tsx'
import { ScaleBar } from '../ui/ScaleBar.tsx'
import { ACROSS, DEPTH, factorFor, PX_PER_MM } from '../ui/scale.ts'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { useFigures } from '../ui/useFigure.ts'
import { wantedDepthMm } from './aim.ts'

interface EdgeGlassProps {
  readonly report: Report
  readonly dot: 'left' | 'right'
}

const TOP_PX = 16
const CURVE_PX = 168
const HEIGHT_PX = 232
/** Room at the right for the scale bars (px). */
const BARS_PX = 68
const BEFORE = { widthPx: 520, heightPx: HEIGHT_PX }
/** Points on the curve: smooth at any size it is drawn in. */
const POINTS = 60

/** The glass: the edge magnified, wanted and predicted, back up at the wheel. */
export const EdgeGlass = ({ report, dot }: EdgeGlassProps) => {
  const t = useTexts()
  const figures = useFigures()
  const box = useRef<HTMLDivElement>(null)
  const roomPx = Math.max(260, useBox(box, BEFORE).widthPx)
  const { plan, grind, job } = report
  const half = job.blade.widthMm / 2
  const lowest = Math.min(...grind.edgeVMm)
  const predicted = grind.edgeUMm.map((u, k) => [u, (grind.edgeVMm[k] as number) - lowest] as const)
  const deepest = Math.max(plan.reliefMm, ...predicted.map(([, depthMm]) => depthMm), 0.02)
  const across = factorFor(ACROSS, 2 * half, roomPx - BARS_PX - 24)
  const depth = factorFor(DEPTH, deepest, CURVE_PX)
  const middle = (roomPx - BARS_PX) / 2
  const place = (u: number, depthMm: number): readonly [number, number] => [
    middle + u * across * PX_PER_MM,
    TOP_PX + depthMm * depth * PX_PER_MM,
  ]
  const line = (points: readonly (readonly [number, number])[]) =>
    `M${points
      .map(([u, d]) =>
        place(u, d)
          .map((px) => px.toFixed(1))
          .join(' '),
      )
      .join('L')}`
  const wanted = Array.from({ length: POINTS + 1 }, (_, k) => -half + (2 * half * k) / POINTS).map(
    (u) => [u, wantedDepthMm(plan.edgeRadiusMm, u)] as const,
  )
  const floor = HEIGHT_PX - 24
  const [left] = place(-half, 0)
  const [right] = place(half, 0)
  const relief = figures.of('aim.reliefMm', plan.reliefMm)
  const words = {
    wanted: figures.inWords(plan.reliefMm, 'mm', 2),
    left: figures.inWords(grind.reliefLeftMm, 'mm', 2),
    right: figures.inWords(grind.reliefRightMm, 'mm', 2),
  }
  return (
    <figure className="plan-figure glass">
      <div className="glass-paper" ref={box}>
        <svg className="drawing" width={roomPx} height={HEIGHT_PX} role="img" aria-label={t('plan:glass.label', words)}>
          <path className="steel" d={`${line(wanted)}V${floor}H${left}Z`} />
          <path className="datum" d={`M${left} ${TOP_PX}H${right}`} />
          <path className="wanted-line" d={line(wanted)} />
          <path className="predicted-line" d={line(predicted)} />
          {[-1, -0.5, 0, 0.5, 1].map((share) => {
            const [x, y] = place(share * half, wantedDepthMm(plan.edgeRadiusMm, share * half))
            return <path key={share} className="diamond" d={`M${x} ${y - 6}l6 6l-6 6l-6 -6Z`} />
          })}
          <circle className="dot" cx={dot === 'left' ? left + 14 : right - 14} cy={floor - 14} r="6" />
          <text x={left} y={HEIGHT_PX - 6}>
            {t('common:side.left')}
          </text>
          <text x={middle} y={HEIGHT_PX - 6} textAnchor="middle">
            {t('plan:glass.middle')}
          </text>
          <text x={right} y={HEIGHT_PX - 6} textAnchor="end">
            {t('common:side.right')}
          </text>
          <ScaleBar xPx={roomPx - BARS_PX + 8} yPx={TOP_PX} factor={depth} mostPx={120} upright />
        </svg>
      </div>
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
          <span className="predicted-word">{t('plan:glass.predicted', words)}</span>
        </p>
      </div>
      <figcaption>
        <strong>{t('plan:glass.heading')}</strong> <span className="muted">{t('plan:scale', { across, depth })}</span>
        <svg className="drawing caption-bar" width="170" height="12" aria-hidden="true">
          <ScaleBar xPx={0} yPx={2} factor={across} mostPx={90} />
        </svg>
      </figcaption>
    </figure>
  )
}
