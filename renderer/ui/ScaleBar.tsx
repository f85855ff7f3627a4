import { barLength, PX_PER_MM } from './scale.ts'
import { useFigures } from './useFigure.ts'

interface ScaleBarProps {
  /** Where it begins: its left end, or its top. */
  readonly xPx: number
  readonly yPx: number
  /** Times life size, in this direction. */
  readonly factor: number
  readonly mostPx: number
  readonly upright?: boolean
}

const PARTS = 4
const THICK_PX = 5

/** A bar of a round length, in four parts, with its length beside it; part of a drawing. */
export const ScaleBar = ({ xPx, yPx, factor, mostPx, upright = false }: ScaleBarProps) => {
  const { lengthUnit } = useFigures()
  const { mm, label } = barLength(mostPx / (factor * PX_PER_MM), lengthUnit)
  const lengthPx = mm * factor * PX_PER_MM
  const part = lengthPx / PARTS
  return (
    <g className="scale-bar" transform={`translate(${xPx} ${yPx})`}>
      {[0, 1, 2, 3].map((k) => (
        <rect
          key={k}
          data-on={k % 2 === 0}
          x={upright ? 0 : k * part}
          y={upright ? k * part : 0}
          width={upright ? THICK_PX : part}
          height={upright ? part : THICK_PX}
        />
      ))}
      <text x={upright ? THICK_PX + 6 : lengthPx + 8} y={upright ? lengthPx / 2 + 5 : 8}>
        {label}
      </text>
    </g>
  )
}
