import type { ReactNode } from 'react'
import type { GrindReport, PlanReport } from '../../geometry/report.ts'
import { ScaleBar } from '../ui/ScaleBar.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { useWindowHeight } from '../ui/useWindowHeight.ts'
import type { Paired } from './compare/useEachEdge.ts'
import type { CurveScale } from './curves.ts'
import { NowCurve, PredictedCurve, WantedCurve } from './GlassCurves.tsx'
import { EndLabels, ReliefFigures } from './GlassLabels.tsx'
import { acrossScale, depthScale, factorText } from './glassScale.ts'
import { OUTSIDE_PX, Stations } from './Views.tsx'
import { LinkedHead } from './views/LinkedHead.tsx'
import { MeasuredEdge, MeasuredLegend } from './views/MeasuredEdge.tsx'
import { deepestMeasuredMm, type Measured } from './views/measured.ts'
import { acrossPlot, PlaceMark } from './views/PlaceMark.tsx'
import { heightIn, type ViewProps } from './views/room.ts'
import './glass.css'

const HEIGHT_PX = 228
/** Height where the window is too low for the whole column (px), and below which height it is (px). */
const LOW_HEIGHT_PX = 166
const LOW_WINDOW_PX = 864
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
  /** The moment that the edge it shows keeps to. */
  readonly paired?: Paired
  readonly foot?: ReactNode
  readonly says?: string
  /** What the edge that it shows is called instead of `now`. */
  readonly nowName?: string
}

interface GlassViewProps extends ViewProps {
  readonly plan: PlanReport | null
  /** The prediction; null while it is not known. */
  readonly predicted: GrindReport | null
  /** What the bench log has of this very iron's edge. */
  readonly measured: Measured | null
  readonly also?: GlassAddition
}

/** What is written of a place stands so far down: under the curves' crown, over the figures (share of the height). */
const WORDS_SHARE = 0.44
/** The relief figures stand so far above the lower end (px). */
const FIGURES_PX = 104

const deepestOf = (plan: PlanReport | null, predicted: GrindReport | null): number =>
  Math.max(plan?.reliefMm ?? 0, predicted?.reliefLeftMm ?? 0, predicted?.reliefRightMm ?? 0, 0.02)

/** The edge magnified: as wanted, as predicted, as it is, as measured. */
export const GlassView = ({ running, moment, lifted, plan, predicted, measured, room, also }: GlassViewProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { widthMm } = running.job.blade
  const { plotPx } = room
  const heightPx = heightIn(room, useWindowHeight() < LOW_WINDOW_PX ? LOW_HEIGHT_PX : HEIGHT_PX)
  const across = acrossScale(widthMm, plotPx)
  const depth = depthScale(
    Math.max(deepestOf(plan, predicted), deepestMeasuredMm(measured), also?.deepestMm ?? 0),
    heightPx - TOP_PX - FOOT_PX,
  )
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
  const said = [
    t(predicted ? 'grind:glass.label' : 'grind:glass.labelNoPrediction', words),
    ...(measured ? [t('views:glass.labelMeasured', { relief: relief(measured.reliefMm) })] : []),
    ...(also?.says === undefined ? [] : [also.says]),
  ]
  return (
    <section className="grind-view" data-view="glass">
      <LinkedHead
        view="glass"
        note={t('views:factors', { across: factorText(across.factor), depth: factorText(depth.factor) })}
        end={<AcrossBar factor={across.factor} mostPx={plotPx / 6} />}
      />
      <div className="glass-plot">
        <svg
          width={plotPx + OUTSIDE_PX}
          height={heightPx}
          className="grind-plot"
          role="img"
          aria-label={said.join(' ')}
        >
          <Stations plotPx={plotPx} heightPx={heightPx} />
          <NowCurve running={running} scale={scale} heightPx={heightPx} lifted={lifted} paired={also?.paired} />
          <path className="grind-datum" d={`M0 ${TOP_PX}H${plotPx}`} />
          {predicted && <PredictedCurve predicted={predicted} scale={scale} />}
          {plan && <WantedCurve running={running} reliefMm={plan.reliefMm} scale={scale} plotPx={plotPx} />}
          {measured && <MeasuredEdge measured={measured} scale={scale} />}
          {also?.draw?.(scale, heightPx)}
          <ScaleBar xPx={plotPx + 12} yPx={TOP_PX} factor={depth.factor} mostPx={DEPTH_BAR_MOST_PX} upright />
          {predicted && (
            <g className="predicted-key">
              <path className="grind-predicted" d={`M8 ${heightPx - 10}H36`} />
              <text x={44} y={heightPx - 5}>
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
            heightPx={heightPx}
          />
          <PlaceMark
            running={running}
            plot={acrossPlot(widthMm, plotPx, heightPx)}
            yPx={heightPx * WORDS_SHARE}
            words={({ reliefMm }) => t('views:glass.at', { relief: relief(reliefMm) })}
          />
        </svg>
        <ReliefFigures moment={moment} plotPx={plotPx} topPx={heightPx - FIGURES_PX} />
      </div>
      {measured && <MeasuredLegend measured={measured} />}
      {also?.foot}
    </section>
  )
}

/** Room for the length beside the bar (px). */
const BAR_WORDS_PX = 62

const AcrossBar = ({ factor, mostPx }: { readonly factor: number; readonly mostPx: number }) => (
  <svg className="drawing" width={mostPx + BAR_WORDS_PX} height={8} aria-hidden="true">
    <ScaleBar xPx={0} yPx={0} factor={factor} mostPx={mostPx} />
  </svg>
)
