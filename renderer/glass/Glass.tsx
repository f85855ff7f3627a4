import { type ReactNode, useRef } from 'react'
import { ScaleBar } from '../ui/ScaleBar.tsx'
import { useTexts } from '../ui/texts.tsx'
import { useBox } from '../ui/useBox.ts'
import { BARS_PX, type GlassEdges, type GlassLayout, glassLayout, lineOf } from './glassLayout.ts'
import { ScaleCaption } from './ScaleCaption.tsx'
import './glass.css'

interface GlassProps {
  readonly edges: GlassEdges
  readonly dot: 'left' | 'right'
  readonly curvePx: number
  readonly heading: string
  /** What the drawing says, in words. */
  readonly label: string
  /** Figures and legend beside the drawing. */
  readonly children: ReactNode
}

const BEFORE = { widthPx: 520, heightPx: 232 }
/** Narrower than this no curve can be read (px). */
const LEAST_WIDTH_PX = 240
const BAR_MOST_PX = 120

/** The glass: the edge magnified, wanted, predicted and measured as far as they are known, back up at the wheel. */
export const Glass = ({ edges, dot, curvePx, heading, label, children }: GlassProps) => {
  const paper = useRef<HTMLDivElement>(null)
  const roomPx = Math.max(LEAST_WIDTH_PX, useBox(paper, BEFORE).widthPx)
  const layout = glassLayout(edges, roomPx, curvePx)
  return (
    <figure className="glass">
      <div className="glass-paper" ref={paper}>
        <svg className="drawing" width={roomPx} height={layout.heightPx} role="img" aria-label={label}>
          <Curves layout={layout} taken={edges.measured?.taken ?? false} />
          <Sides layout={layout} dot={dot} />
          <ScaleBar xPx={roomPx - BARS_PX + 8} yPx={layout.topPx} factor={layout.depth} mostPx={BAR_MOST_PX} upright />
        </svg>
      </div>
      <div className="glass-head">{children}</div>
      <ScaleCaption heading={heading} across={layout.across} depth={layout.depth} />
    </figure>
  )
}

const DIAMOND_PX = 6
const DIAMOND = `l${DIAMOND_PX} ${DIAMOND_PX}l${-DIAMOND_PX} ${DIAMOND_PX}l${-DIAMOND_PX} ${-DIAMOND_PX}Z`

const Curves = ({ layout, taken }: { readonly layout: GlassLayout; readonly taken: boolean }) => {
  const { leftPx, rightPx, topPx, floorPx, wanted, predicted, diamonds, measured, squares } = layout
  const body = measured.length > 0 ? measured : wanted
  return (
    <>
      <path className="steel" d={`${lineOf(body)}V${floorPx}H${leftPx}Z`} />
      <path className="datum" d={`M${leftPx} ${topPx}H${rightPx}`} />
      <path className="wanted-line" d={lineOf(wanted)} />
      {predicted.length > 0 && <path className="predicted-line" d={lineOf(predicted)} />}
      {measured.length > 0 && <path className="measured-line" data-taken={taken} d={lineOf(measured)} />}
      {diamonds.map(([x, y]) => (
        <path key={x} className="diamond" d={`M${x} ${y - DIAMOND_PX}${DIAMOND}`} />
      ))}
      {squares.map(({ at: [x, y], toPx }) => (
        <Square key={x} xPx={x} yPx={y} toPx={toPx} />
      ))}
    </>
  )
}

const SQUARE_PX = 9
const FOOT_PX = 5

interface SquareProps {
  readonly xPx: number
  readonly yPx: number
  readonly toPx: number
}

/** A place measured, with the whisker down to the leaf that did not pass. */
export const Square = ({ xPx, yPx, toPx }: SquareProps) => (
  <>
    <path className="whisker" d={`M${xPx} ${yPx}V${toPx}M${xPx - FOOT_PX} ${toPx}h${2 * FOOT_PX}`} />
    <rect
      className="measured-square"
      x={xPx - SQUARE_PX / 2}
      y={yPx - SQUARE_PX / 2}
      width={SQUARE_PX}
      height={SQUARE_PX}
    />
  </>
)

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
        {t('common:glass.middle')}
      </text>
      <text x={rightPx} y={y} textAnchor="end">
        {t('common:side.right')}
      </text>
    </>
  )
}
