import { useMemo, useRef } from 'react'
import type { GrindReport, PlanReport } from '../../geometry/report.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { type CurveScale, curvePath, wantedAt } from './curves.ts'
import { acrossScale, depthScale, factorText, type Scale } from './glassScale.ts'
import { touchingColumns } from './touching.ts'
import { type Moment, type Running, useEachFrame } from './useLiveGrind.ts'
import { OUTSIDE_PX, Stations, ViewHead } from './Views.tsx'

const HEIGHT_PX = 228
const TOP_PX = 16
/** Room left below the deepest curve, for its label (px). */
const FOOT_PX = 22

interface GlassViewProps {
  readonly running: Running
  readonly moment: Moment
  /** Lifted off the wheel: nothing touches. */
  readonly lifted: boolean
  readonly plan: PlanReport | null
  /** The prediction; null while it is not known. */
  readonly predicted: GrindReport | null
  readonly plotPx: number
}

const deepestOf = (plan: PlanReport | null, predicted: GrindReport | null): number =>
  Math.max(plan?.reliefMm ?? 0, predicted?.reliefLeftMm ?? 0, predicted?.reliefRightMm ?? 0, 0.02)

/** The edge magnified: as wanted, as predicted, as it is. */
export const GlassView = ({ running, moment, lifted, plan, predicted, plotPx }: GlassViewProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { widthMm } = running.job.blade
  const across = acrossScale(widthMm, plotPx)
  const depth = depthScale(deepestOf(plan, predicted), HEIGHT_PX - TOP_PX - FOOT_PX)
  const scale: CurveScale = {
    leftMm: -widthMm / 2,
    acrossPxPerMm: across.pxPerMm,
    depthPxPerMm: depth.pxPerMm,
    topPx: TOP_PX,
  }
  const relief = (mm: number) => inWords(mm, 'mm', 2)
  const words = {
    left: relief(moment.reliefLeftMm),
    right: relief(moment.reliefRightMm),
    wanted: relief(plan?.reliefMm ?? 0),
    predictedLeft: relief(predicted?.reliefLeftMm ?? 0),
    predictedRight: relief(predicted?.reliefRightMm ?? 0),
  }
  return (
    <section className="grind-view">
      <ViewHead
        heading={t('grind:glass.heading')}
        note={t('grind:glass.note', { across: factorText(across.factor), depth: factorText(depth.factor) })}
        end={<ScaleBar scale={across} text={inWords(across.barMm, 'mm', 0)} />}
      />
      <div className="glass-plot">
        <svg
          width={plotPx + OUTSIDE_PX}
          height={HEIGHT_PX}
          className="grind-plot"
          role="img"
          aria-label={t(predicted ? 'grind:glass.label' : 'grind:glass.labelNoPrediction', words)}
        >
          <Stations plotPx={plotPx} heightPx={HEIGHT_PX} />
          <NowCurve running={running} scale={scale} lifted={lifted} />
          <path className="grind-datum" d={`M0 ${TOP_PX}H${plotPx}`} />
          {predicted && <PredictedCurve predicted={predicted} scale={scale} />}
          {plan && <WantedCurve running={running} reliefMm={plan.reliefMm} scale={scale} plotPx={plotPx} />}
          <DepthBar scale={depth} plotPx={plotPx} text={relief(depth.barMm)} />
          {predicted && (
            <g className="predicted-key">
              <path className="grind-predicted" d={`M8 ${HEIGHT_PX - 10}H36`} />
              <text x={44} y={HEIGHT_PX - 5}>
                {t('grind:glass.predicted', { sweeps: running.shape.sweeps })}
              </text>
            </g>
          )}
          <EndLabels moment={moment} plan={plan} scale={scale} plotPx={plotPx} />
        </svg>
        <ReliefFigures moment={moment} plotPx={plotPx} />
      </div>
    </section>
  )
}

const NowCurve = ({ running, scale, lifted }: { running: Running; scale: CurveScale; lifted: boolean }) => {
  const line = useRef<SVGPathElement>(null)
  const body = useRef<SVGPathElement>(null)
  const touch = useRef<SVGPathElement>(null)
  const shade = useRef<SVGRectElement>(null)
  const { uMm, throughCount } = running.shape
  useEachFrame(running, (frame) => {
    const path = curvePath(uMm, (i) => frame.vMm[i * throughCount] as number, scale)
    line.current?.setAttribute('d', path)
    body.current?.setAttribute('d', `${path}V${HEIGHT_PX}H0Z`)
    const columns = lifted ? null : touchingColumns(frame.pressureNPerMm)
    const points = path.slice(1).split('L')
    touch.current?.setAttribute('d', columns ? `M${points.slice(columns[0], columns[1] + 1).join('L')}` : '')
    const at = (i: number) => ((uMm[i] as number) - scale.leftMm) * scale.acrossPxPerMm
    shade.current?.setAttribute('x', String(columns ? at(columns[0]) : 0))
    shade.current?.setAttribute('width', String(columns ? at(columns[1]) - at(columns[0]) : 0))
  })
  return (
    <g>
      <rect ref={shade} className="grind-touch-shade" y={0} height={HEIGHT_PX} />
      <path ref={body} className="grind-now-body" />
      <path ref={line} className="grind-now-line" />
      <path ref={touch} className="grind-now-touch" />
    </g>
  )
}

const PredictedCurve = ({ predicted, scale }: { predicted: GrindReport; scale: CurveScale }) => {
  const path = useMemo(
    () => curvePath(predicted.edgeUMm, (i) => predicted.edgeVMm[i] as number, scale),
    [predicted, scale],
  )
  return <path className="grind-predicted" d={path} />
}

/** Points of the wanted arc and its five marks. */
const WANTED_POINTS = 61
const MARK_SHARES = [0, 0.25, 0.5, 0.75, 1] as const

interface WantedCurveProps {
  readonly running: Running
  readonly reliefMm: number
  readonly scale: CurveScale
  readonly plotPx: number
}

const WantedCurve = ({ running, reliefMm, scale, plotPx }: WantedCurveProps) => {
  const { widthMm } = running.job.blade
  const uMm = Array.from({ length: WANTED_POINTS }, (_, i) => widthMm * (i / (WANTED_POINTS - 1) - 0.5))
  const y = (share: number) => TOP_PX + wantedAt(widthMm * (share - 0.5), widthMm, reliefMm) * scale.depthPxPerMm
  return (
    <g>
      <path className="grind-wanted" d={curvePath(uMm, (i) => wantedAt(uMm[i] as number, widthMm, reliefMm), scale)} />
      {MARK_SHARES.map((share) => (
        <path key={share} className="wanted-mark" d={`M${share * plotPx} ${y(share) - 6}l6 6l-6 6l-6 -6Z`} />
      ))}
    </g>
  )
}

interface EndLabelsProps {
  readonly moment: Moment
  readonly plan: PlanReport | null
  readonly scale: CurveScale
  readonly plotPx: number
}

/** Least distance between two lines of text (px). */
const LINE_PX = 20

/** Names at the right ends of the curves, kept apart. */
const EndLabels = ({ moment, plan, scale, plotPx }: EndLabelsProps) => {
  const t = useTexts()
  const { plain } = useFigures()
  const nowY = TOP_PX + moment.reliefRightMm * scale.depthPxPerMm + 5
  const wantedY = TOP_PX + (plan?.reliefMm ?? 0) * scale.depthPxPerMm + 5
  const clear = Math.abs(nowY - wantedY) >= LINE_PX ? nowY : wantedY - (nowY > wantedY ? -2 : 1) * LINE_PX
  return (
    <g>
      <text className="end-now" x={plotPx + 12} y={Math.max(Math.min(clear, HEIGHT_PX - 4), 84)}>
        {t('grind:glass.now')}
      </text>
      {plan && (
        <text className="end-wanted" x={plotPx + 12} y={wantedY}>
          {t('grind:glass.wanted')}
          <tspan className="end-figure" x={plotPx + 12} dy={LINE_PX}>
            {plain(plan.reliefMm, 'mm', 2).text}
          </tspan>
        </text>
      )}
    </g>
  )
}

/** A bar of four parts, dark and light by turns. */
const ScaleBar = ({ scale, text }: { readonly scale: Scale; readonly text: string }) => {
  const px = scale.barMm * scale.pxPerMm
  return (
    <span className="grind-scale-bar">
      <svg width={px} height={7} aria-hidden="true">
        <rect className="bar-frame" x={0.5} y={0.5} width={px - 1} height={6} />
        <rect x={0} y={0} width={px / 4} height={7} />
        <rect x={px / 2} y={0} width={px / 4} height={7} />
      </svg>
      {text}
    </span>
  )
}

const DepthBar = ({ scale, plotPx, text }: { scale: Scale; plotPx: number; text: string }) => {
  const px = scale.barMm * scale.pxPerMm
  return (
    <g className="depth-bar" transform={`translate(${plotPx + 12} ${TOP_PX})`}>
      <rect className="bar-frame" x={0.5} y={0.5} width={6} height={px - 1} />
      <rect x={0} y={0} width={7} height={px / 2} />
      <text x={14} y={Math.max(px / 2 + 5, 14)}>
        {text}
      </text>
    </g>
  )
}

/** The two figures that everything is about. */
const ReliefFigures = ({ moment, plotPx }: { readonly moment: Moment; readonly plotPx: number }) => {
  const t = useTexts()
  const { plain } = useFigures()
  const [left, right] = [plain(moment.reliefLeftMm, 'mm', 2), plain(moment.reliefRightMm, 'mm', 2)]
  return (
    <dl className="relief-figures" style={{ width: plotPx }}>
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
