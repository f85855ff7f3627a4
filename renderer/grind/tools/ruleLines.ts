import { bevelAngles } from '../../../geometry/protractor.ts'
import type { SetUp } from '../../../geometry/setUp.ts'
import type { SteelLine } from '../../../geometry/straightedge.ts'

/** Lines a rule may be laid along. */
export const ruleLineNames = ['bevel', 'projection', 'gap', 'width', 'relief'] as const
export type RuleLineName = (typeof ruleLineNames)[number]

/** Something on a line that an end of the rule can be put to; its words stand under `tools:rule.marks.<name>`. */
export interface RuleMark {
  readonly name: string
  readonly mm: number
}

/** An end of the rule: on a mark, which it follows, or at a place along the line (mm). */
type RuleEnd = string | number
export type RuleEnds = readonly [from: RuleEnd, to: RuleEnd]

/** What of the moment the lines are found in. */
export interface UnderRule {
  readonly setUp: SetUp
  readonly edge: SteelLine
  readonly section: SteelLine
}

const leastOf = (values: ArrayLike<number>): number => {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < values.length; i++) least = Math.min(least, values[i] as number)
  return least
}

/** First and last of a line. */
const endsOf = (values: ArrayLike<number>): readonly [number, number] => [
  values[0] as number,
  values[values.length - 1] as number,
]

const bevelMarks = ({ section }: UnderRule): readonly RuleMark[] => [
  { name: 'edge', mm: 0 },
  { name: 'heel', mm: bevelAngles(section).chordMm },
]

/** Along the back, from the foremost point of the edge; the bar stands, the edge recedes. */
const projectionMarks = ({ setUp, edge }: UnderRule): readonly RuleMark[] => {
  const axisMm = setUp.projectionMm - leastOf(edge.backMm)
  return [
    { name: 'edge', mm: 0 },
    { name: 'barNear', mm: axisMm - setUp.barRadiusMm },
    { name: 'barAxis', mm: axisMm },
  ]
}

const gapMarks = ({ setUp }: UnderRule): readonly RuleMark[] => {
  const nearMm = setUp.barDistanceMm - setUp.wheelRadiusMm - setUp.barRadiusMm
  return [
    { name: 'wheel', mm: 0 },
    { name: 'barNear', mm: nearMm },
    { name: 'barAxis', mm: nearMm + setUp.barRadiusMm },
  ]
}

const widthMarks = ({ edge }: UnderRule): readonly RuleMark[] => {
  const [leftMm, rightMm] = endsOf(edge.atMm)
  return [
    { name: 'left', mm: 0 },
    { name: 'middle', mm: -leftMm },
    { name: 'right', mm: rightMm - leftMm },
  ]
}

const reliefMarks = ({ edge }: UnderRule): readonly RuleMark[] => {
  const foremostMm = leastOf(edge.backMm)
  const [leftMm, rightMm] = endsOf(edge.backMm)
  return [
    { name: 'foremost', mm: 0 },
    { name: 'left', mm: leftMm - foremostMm },
    { name: 'right', mm: rightMm - foremostMm },
  ]
}

const found: Readonly<Record<RuleLineName, (standing: UnderRule) => readonly RuleMark[]>> = {
  bevel: bevelMarks,
  projection: projectionMarks,
  gap: gapMarks,
  width: widthMarks,
  relief: reliefMarks,
}

/** Where a rule lies until its ends are moved: on what the line is named for. */
const usual: Readonly<Record<RuleLineName, RuleEnds>> = {
  bevel: ['edge', 'heel'],
  projection: ['edge', 'barAxis'],
  gap: ['wheel', 'barNear'],
  width: ['left', 'right'],
  relief: ['foremost', 'left'],
}

/** @returns the marks on a line at this moment, its zero first */
export const marksOn = (line: RuleLineName, standing: UnderRule): readonly RuleMark[] => found[line](standing)

/** @returns the ends of the rule on a line. @param moved where they were put, if they were */
export const endsOn = (line: RuleLineName, moved: RuleEnds | undefined): RuleEnds => moved ?? usual[line]

/** @returns where an end stands along the line (mm) */
export const placeOf = (end: RuleEnd, marks: readonly RuleMark[]): number =>
  typeof end === 'number' ? end : (marks.find(({ name }) => name === end)?.mm ?? 0)

/** @returns the nearest mark within reach of a place, or the place itself */
export const snapped = (mm: number, marks: readonly RuleMark[], reachMm: number): RuleEnd => {
  const away = (mark: RuleMark): number => Math.abs(mark.mm - mm)
  const near = marks.filter((mark) => away(mark) <= reachMm).sort((a, b) => away(a) - away(b))[0]
  return near ? near.name : mm
}
