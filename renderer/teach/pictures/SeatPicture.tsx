import type { LessonState } from '../../../geometry/lesson/state.ts'
import { radFromDeg } from '../../../geometry/units.ts'
import { ironFromSide, seatFigurePlace } from '../../plan/ironFromSide.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'

const WIDTH_PX = 420
/** A sketch of the iron: where its edge stands, its length and thickness, and a piece along its back (px). Angles alone are true. */
const EDGE_PX = 60
const LONG_PX = 230
const THICK_PX = 16
const PIECE_PX = 110
const ARC_PX = 180
const FIGURE_OFF_PX = 10
const ABOVE_PX = 28
const BELOW_PX = 30
/** Drawn where a lesson's set-up finds its bevel only at the wheel. */
const USUAL_BEVEL_DEG = 25

/** The iron in its plane from the side: its seat, and how much of a length along its back stands upright before the wood. */
export const SeatPicture = ({ state: { job } }: { readonly state: LessonState }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const { seatAngleDeg, bevelSide } = job.blade
  if (seatAngleDeg === null) return null
  const sine = Math.sin(radFromDeg(seatAngleDeg))
  const solePx = ABOVE_PX + LONG_PX * sine
  const edgePx = [EDGE_PX, solePx] as const
  const lying = { seatAngleDeg, bevelSide, bevelDeg: job.aim.bevelAngleDeg ?? USUAL_BEVEL_DEG }
  const { at, body } = ironFromSide(lying, { edgePx, longPx: LONG_PX, thickPx: THICK_PX })
  const [figureX, figureY] = seatFigurePlace(seatAngleDeg, edgePx, ARC_PX + FIGURE_OFF_PX)
  const seat = inWords(seatAngleDeg, 'deg', 0)
  return (
    <figure className="teach-picture">
      <svg
        className="drawing teach-seat"
        viewBox={`0 0 ${WIDTH_PX} ${solePx + BELOW_PX}`}
        role="img"
        aria-label={t(`teach:seat.label.${bevelSide}`, { seat })}
      >
        <path className="teach-steel" d={body} />
        <path className="dimension" d={`M8 ${solePx}H${WIDTH_PX - 8}`} />
        <path className="dimension" d={`M${EDGE_PX + ARC_PX} ${solePx}A${ARC_PX} ${ARC_PX} 0 0 0 ${at(ARC_PX, 0)}`} />
        <path className="now" d={`M${at(0, 0)}L${at(PIECE_PX, 0)}`} />
        <path className="teach-drawn-line" d={`M${at(PIECE_PX, 0)}v${PIECE_PX * sine}`} />
        <text x={figureX} y={figureY}>
          {t('teach:seat.angle', { seat })}
        </text>
        <text x={8} y={solePx + 20}>
          {t('teach:seat.sole')}
        </text>
      </svg>
      <figcaption>{t('teach:seat.key')}</figcaption>
    </figure>
  )
}
