import { useRef } from 'react'
import type { Report } from '../../geometry/report.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { lineOf } from '../glass/glassLayout.ts'
import { ScaleCaption } from '../glass/ScaleCaption.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { useFigures } from '../ui/useFigure.ts'
import { useWindowHeight } from '../ui/useWindowHeight.ts'
import { curveRoomPx } from './room.ts'
import { type ShavingLayout, shavingLayout } from './shavingLayout.ts'

interface ShavingDrawingProps {
  readonly report: Report
  readonly tool: Tool
}

const BEFORE = { widthPx: 480, heightPx: 142 }

/** A bevel-up iron goes into its plane turned over, and its dot with it. @returns where the dot is in the plane */
const dotInPlane = ({ bevelSide, dotCorner }: Tool): 'left' | 'right' =>
  (bevelSide === 'up') === (dotCorner === 'right') ? 'left' : 'right'

/** The shaving in section, seen from behind the plane: the board's surface, and the wanted edge let down below it. */
export const ShavingDrawing = ({ report, tool }: ShavingDrawingProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const paper = useRef<HTMLElement>(null)
  const roomPx = useBox(paper, BEFORE).widthPx
  const curvePx = curveRoomPx(useWindowHeight())
  const { seatAngleDeg } = report.job.blade
  if (seatAngleDeg === null) return <p className="plan-figure muted">{t('plan:shaving.noSeat')}</p>
  const layout = shavingLayout(report, seatAngleDeg, roomPx, curvePx)
  const width = inWords(report.plan.shavingWidthMm ?? 0, 'mm', 1)
  const thick = inWords(report.job.aim.shavingDepthMm, 'mm', 2)
  const dot = dotInPlane(tool)
  const label = t('plan:shaving.label', { thick, width })
  return (
    <figure className="plan-figure" ref={paper}>
      <svg className="drawing" width={roomPx} height={layout.heightPx} role="img" aria-label={label}>
        <Board layout={layout} roomPx={roomPx} />
        <Width layout={layout} words={t('plan:shaving.wide', { width })} />
        <Thickness layout={layout} words={thick} />
        <circle className="dot" cx={dot === 'left' ? 14 : roomPx - 14} cy={layout.heightPx - 14} r="6" />
      </svg>
      <ScaleCaption heading={t('plan:shaving.heading')} across={layout.across} depth={layout.depth} />
      <p className="plan-dot muted">{t(`plan:shaving.dot.${tool.bevelSide}`, { side: t(`common:side.${dot}`) })}</p>
    </figure>
  )
}

interface PartProps {
  readonly layout: ShavingLayout
  readonly roomPx: number
}

const GRAIN = [0.15, 0.35, 0.6, 0.85] as const

const Board = ({ layout, roomPx }: PartProps) => {
  const { surfacePx, heightPx, curve, leftPx, rightPx } = layout
  const grain = GRAIN.map((share) => surfacePx + share * (heightPx - surfacePx))
  const [quarter, half] = [roomPx / 4, roomPx / 2]
  return (
    <>
      <rect className="wood" x="0" y={surfacePx} width={roomPx} height={heightPx - surfacePx} />
      <path className="wood-grain" d={grain.map((y) => `M0 ${y}q${quarter} -6 ${half} 0t${half} 0`).join('')} />
      <path className="shaving" d={`${lineOf([[leftPx, surfacePx], ...curve, [rightPx, surfacePx]])}Z`} />
      <path className="surface" d={`M0 ${surfacePx}H${roomPx}`} />
      <path className="now" d={lineOf(curve)} />
    </>
  )
}

/** Least half width of a shaving that its thickness is written in (px). */
const WRITTEN_IN_PX = 88

/** In the shaving, beside its middle; a narrow one has its thickness beside it, on the wood. */
const Thickness = ({ layout, words }: { readonly layout: ShavingLayout; readonly words: string }) => {
  const { middlePx, rightPx, surfacePx } = layout
  const inside = rightPx - middlePx >= WRITTEN_IN_PX
  return (
    <text
      className={inside ? 'on-shaving' : 'on-shaving on-wood'}
      x={(inside ? middlePx : rightPx) + 8}
      y={surfacePx + 26}
    >
      {words}
    </text>
  )
}

/** Half the width of a letter, roughly: the dimension leaves room for its words (px). */
const HALF_LETTER_PX = 3.8
const DIMENSION_PX = 16

const Width = ({ layout, words }: { readonly layout: ShavingLayout; readonly words: string }) => {
  const { leftPx, rightPx, middlePx, surfacePx, deepestPx } = layout
  const wordsPx = words.length * HALF_LETTER_PX + 8
  const between = rightPx - leftPx > 2 * wordsPx
  const gapPx = between ? wordsPx : 0
  const ticks = `M${leftPx} 10v12M${rightPx} 10v12`
  const line = `M${leftPx} ${DIMENSION_PX}H${middlePx - gapPx}M${middlePx + gapPx} ${DIMENSION_PX}H${rightPx}`
  return (
    <>
      <path className="dimension" d={`${ticks}${line}M${middlePx} ${surfacePx}V${deepestPx}`} />
      <text x={between ? middlePx : rightPx + 8} y={DIMENSION_PX + 5} textAnchor={between ? 'middle' : 'start'}>
        {words}
      </text>
    </>
  )
}
