import { useRef } from 'react'
import type { Report } from '../../geometry/report.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { ScaleBar } from '../ui/ScaleBar.tsx'
import { ACROSS, DEPTH, factorFor, PX_PER_MM } from '../ui/scale.ts'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { useFigures } from '../ui/useFigure.ts'
import { wantedDepthMm } from './aim.ts'

interface ShavingDrawingProps {
  readonly report: Report
  readonly tool: Tool
}

/** Heights in the drawing (px). */
const SURFACE_PX = 34
const DEEPEST_PX = 76
const HEIGHT_PX = 142
/** Half the width of a letter, roughly: the dimension leaves room for its words (px). */
const HALF_LETTER_PX = 3.8
const BEFORE = { widthPx: 480, heightPx: HEIGHT_PX }
/** Points on the curve: smooth at any size it is drawn in. */
const POINTS = 60

/** The shaving in section, seen from behind the plane: the board's surface, and the wanted edge let down below it. */
export const ShavingDrawing = ({ report, tool }: ShavingDrawingProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const box = useRef<HTMLElement>(null)
  const roomPx = useBox(box, BEFORE).widthPx
  const { plan, job } = report
  const { widthMm, seatAngleDeg } = job.blade
  if (seatAngleDeg === null) return <p className="plan-figure muted">{t('plan:shaving.noSeat')}</p>
  const across = factorFor(ACROSS, widthMm, roomPx - 24)
  const depth = factorFor(DEPTH, job.aim.shavingDepthMm, DEEPEST_PX)
  const [xPerMm, yPerMm] = [across * PX_PER_MM, depth * PX_PER_MM]
  const middle = roomPx / 2
  const sine = Math.sin((seatAngleDeg * Math.PI) / 180)
  const yAt = (uMm: number) =>
    SURFACE_PX + yPerMm * (job.aim.shavingDepthMm - sine * wantedDepthMm(plan.edgeRadiusMm, uMm))
  const half = (plan.shavingWidthMm ?? widthMm) / 2
  const points = Array.from({ length: POINTS + 1 }, (_, k) => -half + (2 * half * k) / POINTS)
  const curve = points.map((u) => `${(middle + u * xPerMm).toFixed(1)} ${yAt(u).toFixed(1)}`).join('L')
  const width = inWords(plan.shavingWidthMm ?? 0, 'mm', 1)
  const thick = inWords(job.aim.shavingDepthMm, 'mm', 2)
  const [x0, x1] = [middle - half * xPerMm, middle + half * xPerMm]
  const gapPx = Math.min((x1 - x0) / 2, t('plan:shaving.wide', { width }).length * HALF_LETTER_PX + 8)
  const left = tool.bevelSide === 'up' ? tool.dotCorner === 'right' : tool.dotCorner === 'left'
  return (
    <figure className="plan-figure" ref={box}>
      <svg
        className="drawing"
        width={roomPx}
        height={HEIGHT_PX}
        role="img"
        aria-label={t('plan:shaving.label', { thick, width })}
      >
        <rect className="wood" x="0" y={SURFACE_PX} width={roomPx} height={HEIGHT_PX - SURFACE_PX} />
        <path
          className="wood-grain"
          d={[62, 84, 106, 128].map((y) => `M0 ${y}q${roomPx / 4} -6 ${roomPx / 2} 0t${roomPx / 2} 0`).join('')}
        />
        <path className="shaving" d={`M${x0} ${SURFACE_PX}L${curve}L${x1} ${SURFACE_PX}Z`} />
        <path className="surface" d={`M0 ${SURFACE_PX}H${roomPx}`} />
        <path className="now" d={`M${curve}`} />
        <path className="dimension" d={`M${x0} 10v12M${x1} 10v12M${x0} 16H${middle - gapPx}M${middle + gapPx} 16H${x1}M${middle} ${SURFACE_PX}V${yAt(0)}`} />
        <text x={middle} y="21" textAnchor="middle">
          {t('plan:shaving.wide', { width })}
        </text>
        <text className="on-shaving" x={middle + 8} y={SURFACE_PX + 26}>
          {thick}
        </text>
        <circle className="dot" cx={left ? 14 : roomPx - 14} cy={HEIGHT_PX - 14} r="6" />
        <text className="on-wood" x={left ? 28 : roomPx - 28} y={HEIGHT_PX - 9} textAnchor={left ? 'start' : 'end'}>
          {t(`plan:shaving.dot.${tool.bevelSide}`, { side: t(`common:side.${left ? 'left' : 'right'}`) })}
        </text>
      </svg>
      <figcaption>
        <strong>{t('plan:shaving.heading')}</strong> <span className="muted">{t('plan:scale', { across, depth })}</span>
        <svg className="drawing caption-bar" width="170" height="12" aria-hidden="true">
          <ScaleBar xPx={0} yPx={2} factor={across} mostPx={90} />
        </svg>
      </figcaption>
    </figure>
  )
}
