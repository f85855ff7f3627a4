import { radFromDeg } from '../../geometry/units.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'

const WIDTH_PX = 320
const HEIGHT_PX = 300
const MIDDLE_PX = 150
const HALF_PX = 78
const TOP_PX = 20
const EDGE_PX = 208
const STOCK_PX = 18
/** The skew is drawn so many times as steep, but never so that it leaves the drawing. */
const FACTORS = [50, 20, 10, 5, 2, 1] as const
const MOST_PX = 48

const slopeOf = (deg: number): number => Math.tan(radFromDeg(deg))

/** The square on the iron, back up: stock along a side, blade under the edge, light where the far corner lies back. */
export const SquareDrawing = ({ skewDeg, dot }: { readonly skewDeg: number; readonly dot: 'left' | 'right' }) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const slope = slopeOf(Math.abs(skewDeg))
  const factor = FACTORS.find((each) => 2 * HALF_PX * slope * each <= MOST_PX) ?? 1
  const rise = 2 * HALF_PX * slope * factor
  const [left, right] = [MIDDLE_PX - HALF_PX, MIDDLE_PX + HALF_PX]
  const [leftY, rightY] = skewDeg > 0 ? [EDGE_PX, EDGE_PX - rise] : [EDGE_PX - rise, EDGE_PX]
  const fromLeft = skewDeg >= 0
  const stockX = fromLeft ? left - STOCK_PX : right
  const label = t('square:drawing.label', { skew: inWords(skewDeg, 'deg', 2), factor })
  return (
    <figure className="square-drawing">
      <svg className="drawing" viewBox={`0 0 ${WIDTH_PX} ${HEIGHT_PX}`} role="img" aria-label={label}>
        <path className="steel square-iron" d={`M${left} ${TOP_PX}V${leftY}L${right} ${rightY}V${TOP_PX}Z`} />
        <path className="now" d={`M${left} ${leftY}L${right} ${rightY}`} />
        <path className="axis" d={`M${MIDDLE_PX} ${TOP_PX - 12}V${EDGE_PX + 40}`} />
        <rect className="square-tool" x={stockX} y={EDGE_PX - 130} width={STOCK_PX} height={152} />
        <rect
          className="square-tool"
          x={fromLeft ? left - STOCK_PX : left - 14}
          y={EDGE_PX}
          width={2 * HALF_PX + STOCK_PX + 14}
          height={16}
        />
        {rise > 0 && (
          <path
            className="dimension"
            d={
              fromLeft
                ? `M${right + 8} ${rightY}V${EDGE_PX}M${right + 3} ${rightY}h10M${right + 3} ${EDGE_PX}h10`
                : `M${left - 8} ${leftY}V${EDGE_PX}M${left - 13} ${leftY}h10M${left - 13} ${EDGE_PX}h10`
            }
          />
        )}
        <circle className="dot" cx={dot === 'left' ? left + 14 : right - 14} cy={TOP_PX + 150} r="6" />
        <text x={left} y={HEIGHT_PX - 40}>
          {t('common:side.left')}
        </text>
        <text x={right} y={HEIGHT_PX - 40} textAnchor="end">
          {t('common:side.right')}
        </text>
      </svg>
      <figcaption className="muted">{t('square:drawing.caption', { factor })}</figcaption>
    </figure>
  )
}
