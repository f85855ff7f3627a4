import { useTexts } from '../../ui/texts.tsx'
import { useFigures } from '../../ui/useFigure.ts'
import { Knob } from './Knob.tsx'
import { placeOf, type RuleEnds, type RuleMark, snapped } from './ruleLines.ts'
import { graduationMm, type RuleScale } from './ruleScale.ts'
import { useToolbox } from './toolbox.ts'

/** The rule's height (px). */
export const RULE_PX = 34
/** An end this near to a mark goes to it (px). */
const SNAP_PX = 9

interface EndProps {
  readonly which: 0 | 1
  readonly mm: number
  readonly marks: readonly RuleMark[]
  readonly ends: RuleEnds
  readonly scale: RuleScale
  readonly xPx: number
  readonly topPx: number
}

/** One end of what is measured: dragged or by keys, it goes to a mark that is near. */
export const End = ({ which, mm, marks, ends, scale, xPx, topPx }: EndProps) => {
  const t = useTexts()
  const { lengthUnit, inWords } = useFigures()
  const end = ends[which]
  const put = (toMm: number) => {
    const next = snapped(toMm, marks, SNAP_PX / scale.pxPerMm)
    setEnd(which, ends, next)
  }
  const words = t(typeof end === 'string' ? 'tools:rule.endOn' : 'tools:rule.endAt', {
    mark: typeof end === 'string' ? t(`tools:rule.marks.${end}`) : '',
    at: inWords(mm, 'mm', 2),
    length: inWords(Math.abs(mm - placeOf(ends[1 - which] as string | number, marks)), 'mm', 2),
  })
  return (
    <Knob
      name={t(which === 0 ? 'tools:rule.from' : 'tools:rule.to')}
      value={mm}
      min={0}
      max={scale.lengthMm}
      step={graduationMm(lengthUnit)}
      jumps={marks.map((mark) => mark.mm).sort((a, b) => a - b)}
      words={words}
      at={(start, dx) => start + dx / scale.pxPerMm}
      onChange={put}
    >
      <rect className="tool-hold" x={xPx - 13} y={topPx - 8} width={26} height={RULE_PX + 32} />
      <path className="tool-end" d={`M${xPx} ${topPx - 8}V${topPx + RULE_PX + 8}`} />
      <circle className="grind-ring" cx={xPx} cy={topPx + RULE_PX + 13} r={4.5} />
    </Knob>
  )
}

const setEnd = (which: 0 | 1, ends: RuleEnds, next: string | number): void =>
  useToolbox.setState(({ ruleLine, ruleEnds }) => ({
    ruleEnds: { ...ruleEnds, [ruleLine]: which === 0 ? [next, ends[1]] : [ends[0], next] },
  }))
