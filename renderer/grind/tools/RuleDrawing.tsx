import { ScaleBar } from '../../ui/ScaleBar.tsx'
import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { OUTSIDE_PX } from '../Views.tsx'
import { End, RULE_PX } from './RuleEnd.tsx'
import { placeOf, type RuleEnds, type RuleMark } from './ruleLines.ts'
import { type Graduation, graduations, type RuleScale } from './ruleScale.ts'

interface RuleDrawingProps {
  readonly marks: readonly RuleMark[]
  readonly ends: RuleEnds
  readonly scale: RuleScale
  readonly plotPx: number
}

const LEFT_PX = 14
const ROW_PX = 20
/** From the lowest name to the rule (px). */
const APART_PX = 10
const BELOW_PX = 40

/** A line with its marks, and the rule on it, graduated true to the factor. */
export const RuleDrawing = ({ marks, ends, scale, plotPx }: RuleDrawingProps) => {
  const t = useTexts()
  const { lengthUnit } = useFigures()
  const xPx = (mm: number) => LEFT_PX + mm * scale.pxPerMm
  const [fromMm, toMm] = [placeOf(ends[0], marks), placeOf(ends[1], marks)]
  const way = toMm < fromMm ? -1 : 1
  const rulePx = marks.length * ROW_PX + APART_PX
  // Beyond the far end the rule goes on, as rules do.
  const roomMm = way > 0 ? scale.lengthMm + 24 / scale.pxPerMm - fromMm : fromMm
  const lines = graduations(Math.max(roomMm, 0), scale.pxPerMm, lengthUnit)
  const heightPx = rulePx + RULE_PX + BELOW_PX
  return (
    // biome-ignore lint/a11y/useSemanticElements: a drawing that holds controls
    <svg
      width={plotPx + OUTSIDE_PX}
      height={heightPx}
      className="grind-plot tool-drawing"
      role="group"
      aria-label={t('tools:rule.label')}
    >
      <g transform={`translate(${xPx(fromMm)} ${rulePx}) scale(${way} 1)`}>
        <rect className="tool-body" x={0} y={0} width={Math.max(roomMm, 0) * scale.pxPerMm} height={RULE_PX} />
        {lines.map((line) => (
          <Line key={line.mm} line={line} pxPerMm={scale.pxPerMm} way={way} />
        ))}
      </g>
      {marks.map(({ name, mm }, row) => (
        <Mark key={name} name={t(`tools:rule.marks.${name}`)} xPx={xPx(mm)} row={row} footPx={rulePx} endPx={plotPx} />
      ))}
      <End which={0} mm={fromMm} marks={marks} ends={ends} scale={scale} xPx={xPx(fromMm)} topPx={rulePx} />
      <End which={1} mm={toMm} marks={marks} ends={ends} scale={scale} xPx={xPx(toMm)} topPx={rulePx} />
      <ScaleBar xPx={plotPx + 4} yPx={heightPx - 14} factor={scale.factor} mostPx={44} />
    </svg>
  )
}

interface LineProps {
  readonly line: Graduation
  readonly pxPerMm: number
  /** Figures are never mirrored with the rule. */
  readonly way: 1 | -1
}

const Line = ({ line, pxPerMm, way }: LineProps) => (
  <>
    <path className="tool-graduation" d={`M${line.mm * pxPerMm} 0v${line.heightPx}`} />
    {line.figure !== null && (
      <text
        className="tool-rule-figure"
        transform={`translate(${line.mm * pxPerMm} ${RULE_PX - 4}) scale(${way} 1)`}
        textAnchor={line.mm === 0 ? (way > 0 ? 'start' : 'end') : 'middle'}
        dx={line.mm === 0 ? way * 3 : 0}
      >
        {line.figure}
      </text>
    )}
  </>
)

interface MarkProps {
  readonly name: string
  readonly xPx: number
  readonly row: number
  readonly footPx: number
  readonly endPx: number
}

/** A thing on the line: its name in a row of its own, and a line down to the rule. */
const Mark = ({ name, xPx, row, footPx, endPx }: MarkProps) => {
  const before = xPx > endPx / 2
  const yPx = row * ROW_PX + 14
  return (
    <g>
      <path className="grind-leader" d={`M${xPx} ${yPx - 10}V${footPx}`} />
      <text x={xPx + (before ? -6 : 6)} y={yPx} textAnchor={before ? 'end' : 'start'}>
        {name}
      </text>
    </g>
  )
}
