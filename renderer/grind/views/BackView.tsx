import { degFromRad } from '../../../geometry/units.ts'
import { ScaleBar } from '../../ui/ScaleBar.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { acrossScale, factorText } from '../glassScale.ts'
import type { Moment } from '../useLiveGrind.ts'
import { OUTSIDE_PX } from '../Views.tsx'
import { BackBlade } from './BackBlade.tsx'
import { BackStops, GUIDE_PX } from './BackStops.tsx'
import { type BackPlot, backX, backY } from './backPlan.ts'
import { LinkedHead } from './LinkedHead.tsx'
import { acrossPlot, PlaceMark } from './PlaceMark.tsx'
import { heightIn, type ViewProps } from './room.ts'
import { usePlaceName } from './usePlaceName.ts'
import './back.css'

interface BackViewProps extends ViewProps {
  readonly dot: 'left' | 'right'
}

const HEIGHT_PX = 210
/** The break between guide and blade (px). */
const BREAK_PX = 14
/** Room under the edge for the wheel's line, and for its name where that stands there (px). */
const UNDER_PX = 14
const UNDER_NAME_PX = 30
/** In the model's place everything carries its name, where a plot is at least so wide, over a break so much higher (px). */
const NAMED_PX = 480
const NAMED_BREAK_PX = 16
/** The dot lies so far in from corner and edge, with this radius (mm); on a narrow blade both keep to a share of its width. */
const DOT_IN_MM = 5
const DOT_MM = 1.6
const DOT_IN_SHARE = 0.2
const DOT_SHARE = 0.05
/** Yaw and traverse smaller than these are written as none (degrees, mm). */
const SQUARE_DEG = 0.005
const CENTRED_MM = 0.05

/** Plan of the back: the blade seen square on its back, broken off above, with the wheel's line, load and stops. */
export const BackView = ({ running, moment, lifted, room, dot }: BackViewProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const placeName = usePlaceName()
  const line = useBackWords(moment, lifted)
  const { job } = running
  const { widthMm } = job.blade
  const { plotPx } = room
  const scale = acrossScale(widthMm, plotPx)
  const heightPx = heightIn(room, HEIGHT_PX)
  const steered = job.fixture.kind === 'steered' && job.fixture.guideArmMm !== null
  const named = room.heightPx !== null && plotPx >= NAMED_PX
  const topPx = steered ? GUIDE_PX + BREAK_PX + (named ? NAMED_BREAK_PX : 0) : BREAK_PX
  const dotInMm = Math.min(DOT_IN_MM, DOT_IN_SHARE * widthMm)
  const dotMm = Math.min(DOT_MM, DOT_SHARE * widthMm)
  const edgeYPx = heightPx - (named ? UNDER_NAME_PX : UNDER_PX)
  const plot: BackPlot = { leftMm: -widthMm / 2, edgeYPx, pxPerMm: scale.pxPerMm, topPx, plotPx }
  return (
    <section className="grind-view" data-view="back">
      <LinkedHead view="back" note={t('views:backPlan.note', { factor: factorText(scale.factor) })} />
      <svg
        className="drawing grind-back"
        width={plotPx + OUTSIDE_PX}
        height={heightPx}
        role="img"
        aria-label={t('views:backPlan.label', { line })}
      >
        <BackBlade running={running} moment={moment} lifted={lifted} plot={plot} named={named} />
        <circle
          className="dot"
          cx={backX(plot, (dot === 'left' ? -1 : 1) * (widthMm / 2 - dotInMm))}
          cy={backY(plot, dotInMm)}
          r={dotMm * scale.pxPerMm}
        />
        {steered && (
          <BackStops
            running={running}
            moment={moment}
            lifted={lifted}
            pxPerMm={scale.pxPerMm}
            plotPx={plotPx}
            named={named}
          />
        )}
        <ScaleBar xPx={plotPx + 12} yPx={topPx + 8} factor={scale.factor} mostPx={BAR_MOST_PX} />
        <PlaceMark
          running={running}
          plot={acrossPlot(widthMm, plotPx, heightPx)}
          yPx={topPx + 30}
          words={({ uMm }) => placeName(uMm)}
        />
      </svg>
      <p className="grind-view-line">
        {line} {t('views:backPlan.load', { load: inWords(job.motion.loadN, 'N', 0) })}
      </p>
    </section>
  )
}

const BAR_MOST_PX = 48

const useBackWords = (moment: Moment, lifted: boolean): string => {
  const t = useTexts()
  const { inWords } = useFigures()
  const yawDeg = degFromRad(moment.yawRad)
  const side = (value: number, none: number) => (Math.abs(value) < none ? 'none' : value < 0 ? 'left' : 'right')
  if (lifted) return t('views:backPlan.lifted')
  return t('views:backPlan.line', {
    yaw: t(`views:backPlan.yaw.${side(yawDeg, SQUARE_DEG)}`, { yaw: inWords(Math.abs(yawDeg), 'deg', 2) }),
    traverse: t(`views:backPlan.traverse.${side(moment.traverseMm, CENTRED_MM)}`, {
      traverse: inWords(Math.abs(moment.traverseMm), 'mm', 1),
    }),
    stop: t(`views:backPlan.stop.${moment.bearing ?? 'none'}`),
  })
}
