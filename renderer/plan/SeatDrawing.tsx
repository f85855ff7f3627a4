import type { Report } from '../../geometry/report.ts'
import { floorPxOf } from '../glass/glassLayout.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { useWindowHeight } from '../ui/useWindowHeight.ts'
import { ironFromSide, seatFigurePlace } from './ironFromSide.ts'
import { curveRoomPx } from './room.ts'

const WIDTH_PX = 190
/** Thickness of the board, and where the edge is drawn (px). */
const BOARD_PX = 50
const EDGE_PX = 40
/** A sketch of the iron: its length and thickness (px). Its angles are true; its size is nobody's. */
const LONG_PX = 96
const THICK_PX = 11
const ARC_PX = 100
/** Between the arc and its figure (px). */
const FIGURE_OFF_PX = 8

/** How the iron lies in its plane: true angles on a sketch. */
export const SeatDrawing = ({ report }: { readonly report: Report }) => {
  const t = useTexts()
  const figures = useFigures()
  const heightPx = floorPxOf(curveRoomPx(useWindowHeight()))
  const surfacePx = heightPx - BOARD_PX
  const { seatAngleDeg, bevelSide } = report.job.blade
  if (seatAngleDeg === null || !report.woodView) return null
  const degrees = (value: number) => figures.inWords(value, 'deg', 0)
  const words = {
    seat: degrees(seatAngleDeg),
    pitch: degrees(report.woodView.pitchDeg),
    clearance: degrees(report.woodView.clearanceDeg),
  }
  const edgePx = [EDGE_PX, surfacePx] as const
  const lying = { seatAngleDeg, bevelSide, bevelDeg: report.setUp.bevelAngleDeg }
  const { at, body } = ironFromSide(lying, { edgePx, longPx: LONG_PX, thickPx: THICK_PX })
  const [figureX, figureY] = seatFigurePlace(seatAngleDeg, edgePx, ARC_PX + FIGURE_OFF_PX)
  return (
    <figure className="seat-figure">
      <svg className="drawing" width={WIDTH_PX} height={heightPx} role="img" aria-label={t('plan:seat.label', words)}>
        <rect className="wood" x="0" y={surfacePx} width={WIDTH_PX} height={heightPx - surfacePx} />
        <path className="steel" d={body} />
        <path className="surface" d={`M0 ${surfacePx}H${WIDTH_PX}`} />
        <path className="axis" d={`M${at(LONG_PX, 0)}L${at(ARC_PX + 14, 0)}`} />
        <path
          className="dimension"
          d={`M${EDGE_PX + ARC_PX} ${surfacePx}A${ARC_PX} ${ARC_PX} 0 0 0 ${at(ARC_PX, 0)}`}
        />
        <text className="seat-angle" x={figureX} y={figureY}>
          {words.seat}
        </text>
      </svg>
      <figcaption className="muted">{t('plan:seat.caption', words)}</figcaption>
    </figure>
  )
}
