import { lineOf } from '../glass/glassLayout.ts'
import { useTexts } from '../ui/texts.tsx'
import { useFigures } from '../ui/useFigure.ts'
import { askewOf } from './reading.ts'
import type { Shown } from './shown.ts'
import { straightedgeLayout, touchOf } from './straightedgeLayout.ts'
import './straightedge.css'

interface StraightedgeProps {
  readonly shown: Shown | null
  readonly dot: 'left' | 'right'
}

/** How the straightedge must lie; beside it how it lay by unequal leaves, or how it must not. */
export const Straightedge = ({ shown, dot }: StraightedgeProps) => {
  const t = useTexts()
  const { inWords } = useFigures()
  const askew = shown !== null && shown.line === null && askewOf(shown.edge) !== null ? shown.leaves : null
  const leaves = {
    left: inWords(askew?.leftMm ?? 0, 'mm', 2),
    right: inWords(askew?.rightMm ?? 0, 'mm', 2),
  }
  return (
    <section className="lie" aria-label={t('measure:lie.heading')}>
      <Sketch touch={0} dot={dot} label={t('measure:lie.mustLabel')} caption={t('measure:lie.must')} good />
      {askew ? (
        <Sketch
          touch={touchOf(askew)}
          dot={dot}
          label={t('measure:lie.layLabel', leaves)}
          caption={t('measure:lie.lay')}
        />
      ) : (
        <Sketch touch={-1} dot={dot} label={t('measure:lie.cornerLabel')} caption={t('measure:lie.corner')} />
      )}
      <p className="muted lie-note">{t('measure:lie.sketch')}</p>
    </section>
  )
}

const WIDTH_PX = 300
const HALF_PX = 118
const RULE_PX = 11

interface SketchProps {
  readonly touch: number
  readonly dot: 'left' | 'right'
  readonly label: string
  readonly caption: string
  readonly good?: boolean
}

const Sketch = ({ touch, dot, label, caption, good = false }: SketchProps) => {
  const middlePx = WIDTH_PX / 2
  const layout = straightedgeLayout(touch, middlePx, HALF_PX)
  const { curve, rule, gaps, touches, floorPx } = layout
  const [[leftPx, leftY], [rightPx, rightY]] = rule
  const dotX = middlePx + (dot === 'left' ? -1 : 1) * (HALF_PX - 14)
  return (
    <figure className="lie-sketch" data-good={good}>
      <svg className="drawing" viewBox={`0 0 ${WIDTH_PX} ${floorPx}`} role="img" aria-label={label}>
        <path className="steel" d={`${lineOf(curve)}V${floorPx}H${middlePx - HALF_PX}Z`} />
        <path className="lie-edge" d={lineOf(curve)} />
        <path
          className="lie-rule"
          d={`M${leftPx} ${leftY}L${rightPx} ${rightY}V${rightY - RULE_PX}L${leftPx} ${leftY - RULE_PX}Z`}
        />
        {gaps.map((gap) => (
          <path key={gap.edge[0]} className="lie-leaf" d={lineOf([gap.edge, gap.rule])} />
        ))}
        <circle className="lie-touch" cx={touches[0]} cy={touches[1]} r="5" />
        <circle className="dot" cx={dotX} cy={floorPx - 12} r="5" />
      </svg>
      <figcaption>{caption}</figcaption>
    </figure>
  )
}
