import { useTexts } from '../ui/texts.tsx'

/** Length of an arrow and of its head (px). */
const ARROW_PX = 34
const HEAD_PX = 6
const FRONT = `M0 0V${ARROW_PX}M${-HEAD_PX} ${HEAD_PX}L0 0L${HEAD_PX} ${HEAD_PX}`
const UP = `M0 ${ARROW_PX}H${ARROW_PX}m${-HEAD_PX} ${-HEAD_PX}l${HEAD_PX} ${HEAD_PX}l${-HEAD_PX} ${HEAD_PX}`

interface WaysProps {
  readonly xPx: number
  readonly yPx: number
}

/**
 * For a bar in front of the wheel, whose drawing lies a quarter turned: which way front and up are at the bench. The blade lies
 * on the bar with its back up, and it is drawn to the right of the bar, so up is to the right.
 */
export const Ways = ({ xPx, yPx }: WaysProps) => {
  const t = useTexts()
  return (
    <g transform={`translate(${xPx} ${yPx})`}>
      <path className="dimension" d={FRONT + UP} />
      <text x="10" y="11">
        {t('setUp:drawing.front')}
      </text>
      <text x={ARROW_PX + 6} y={ARROW_PX + 5}>
        {t('setUp:drawing.up')}
      </text>
    </g>
  )
}
