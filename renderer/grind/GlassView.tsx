import type { ReactNode } from 'react'
import type { GrindReport, PlanReport } from '../../geometry/report.ts'
import { ScaleBar } from '../ui/ScaleBar.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import type { CurveScale } from './curves.ts'
import { NowCurve, PredictedCurve, WantedCurve } from './GlassCurves.tsx'
import { EndLabels, ReliefFigures } from './GlassLabels.tsx'
import { acrossScale, depthScale, factorText } from './glassScale.ts'
import type { Moment, Running } from './useLiveGrind.ts'
import { OUTSIDE_PX, Stations, ViewHead } from './Views.tsx'
import './glass.css'

const HEIGHT_PX = 228
const TOP_PX = 16
/** Room left below the deepest curve, for its label (px). */
const FOOT_PX = 22
/** The names of the curves stand below it (px). */
const DEPTH_BAR_MOST_PX = 56

/** What else is drawn into the glass. */
interface GlassAddition {
  /** Fits into the depth too, so that several glasses have one scale. */
  readonly deepestMm: number
  readonly draw?: (scale: CurveScale, heightPx: number) => ReactNode
  readonly foot?: ReactNode
  readonly says?: string
  /** What the edge that it shows is called instead of `now`. */
  readonly nowName?: string
}

interface GlassViewProps {
  readonly running: Running
  readonly moment: Moment
  /** Lifted off the wheel: nothing touches. */
  readonly lifted: boolean
  readonly plan: PlanReport | null
  /** The prediction; null while it is not known. */
  readonly predicted: GrindReport | null
  readonly plotPx: number
  readonly also?: GlassAddition
}

const deepestOf = (plan: PlanReport | null, predicted: GrindReport | null): number =>
  Math.max(plan?.reliefMm ?? 0, predicted?.reliefLeftMm ?? 0, predicted?.reliefRightMm ?? 0, 0.02)

/** The edge magnified: as wanted, as predicted, as it is. */
export const GlassView = ({ running, moment, lifted, plan, predicted, plotPx, also }: GlassViewProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { widthMm } = running.job.blade
  const across = acrossScale(widthMm, plotPx)
  const depth = depthScale(Math.max(deepestOf(plan, predicted), also?.deepestMm ?? 0), HEIGHT_PX - TOP_PX - FOOT_PX)
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
        end={<AcrossBar factor={across.factor} mostPx={plotPx / 4} />}
      />
      <div className="glass-plot">
        <svg
          width={plotPx + OUTSIDE_PX}
          height={HEIGHT_PX}
          className="grind-plot"
          role="img"
          aria-label={`${t(predicted ? 'grind:glass.label' : 'grind:glass.labelNoPrediction', words)} ${also?.says ?? ''}`.trim()}
        >
          <Stations plotPx={plotPx} heightPx={HEIGHT_PX} />
          <NowCurve running={running} scale={scale} heightPx={HEIGHT_PX} lifted={lifted} />
          <path className="grind-datum" d={`M0 ${TOP_PX}H${plotPx}`} />
          {predicted && <PredictedCurve predicted={predicted} scale={scale} />}
          {plan && <WantedCurve running={running} reliefMm={plan.reliefMm} scale={scale} plotPx={plotPx} />}
          {also?.draw?.(scale, HEIGHT_PX)}
          <ScaleBar xPx={plotPx + 12} yPx={TOP_PX} factor={depth.factor} mostPx={DEPTH_BAR_MOST_PX} upright />
          {predicted && (
            <g className="predicted-key">
              <path className="grind-predicted" d={`M8 ${HEIGHT_PX - 10}H36`} />
              <text x={44} y={HEIGHT_PX - 5}>
                {t('grind:glass.predicted', { sweeps: running.shape.sweeps })}
              </text>
            </g>
          )}
          <EndLabels
            nowName={also?.nowName}
            moment={moment}
            plan={plan}
            scale={scale}
            plotPx={plotPx}
            heightPx={HEIGHT_PX}
          />
        </svg>
        <ReliefFigures moment={moment} plotPx={plotPx} />
      </div>
      {also?.foot}
    </section>
  )
}

/** Room for the length beside the bar (px). */
const BAR_WORDS_PX = 76

const AcrossBar = ({ factor, mostPx }: { readonly factor: number; readonly mostPx: number }) => (
  <svg className="drawing" width={mostPx + BAR_WORDS_PX} height={8} aria-hidden="true">
    <ScaleBar xPx={0} yPx={0} factor={factor} mostPx={mostPx} />
  </svg>
)
