import type { Dressing } from '../../../main/contract/work.ts'
import { shortDate } from '../../ui/dates.ts'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { wearLine } from './wearLine.ts'

interface WearDrawingProps {
  /** Newest first, at least two. */
  readonly dressings: readonly Dressing[]
  /** The machine's least wheel; null: not known. */
  readonly leastMm: number | null
}

/** Room of the drawing (px). */
const [WIDTH, HEIGHT, EDGE] = [720, 120, 8] as const

/** The wheel's diameter from its first line in the log to the last, dressings marked. */
export const WearDrawing = ({ dressings, leastMm }: WearDrawingProps) => {
  const t = useTexts()
  const figures = useFigures()
  const { points, leastY } = wearLine(dressings, leastMm, { width: WIDTH, height: HEIGHT, edge: EDGE })
  const [newest, oldest] = [dressings[0] as Dressing, dressings.at(-1) as Dressing]
  const label = t('dressing:drawing', {
    from: figures.inWords(oldest.diameterMm, 'mm', 1),
    to: figures.inWords(newest.diameterMm, 'mm', 1),
    first: shortDate(oldest.at),
    last: shortDate(newest.at),
  })
  return (
    <figure className="wear-drawing">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={label}>
        {leastY !== null && <line className="wear-least" x1={EDGE} x2={WIDTH - EDGE} y1={leastY} y2={leastY} />}
        <polyline points={points.map(({ x, y }) => `${x},${y}`).join(' ')} />
        {points.map(({ id, x, y, kind }) => (
          <circle key={id} cx={x} cy={y} r={kind === 'dressed' ? 4 : 2} data-kind={kind} />
        ))}
      </svg>
      <figcaption className="muted">{label}</figcaption>
    </figure>
  )
}
