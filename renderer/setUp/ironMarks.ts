import type { Job } from '../../geometry/job.ts'
import { quantities } from '../../geometry/quantities.ts'
import { setUpOf } from '../../geometry/setUp.ts'
import type { Tool } from '../../main/contract/entities.ts'
import { bladeOf } from '../../main/contract/jobParts.ts'

/** Where an iron's projection falls on the rule, for its own bevel with the bar as it stands. */
export interface IronMark {
  readonly tool: Tool
  /** Null: with this bar there is no projection for it. */
  readonly projectionMm: number | null
}

const { min, max } = quantities.aim.projectionMm

/** The marks of a rack's irons at one station, in one fixture, for one place of the bar. */
export const ironMarks = (job: Job, barDistanceMm: number, tools: readonly Tool[]): readonly IronMark[] =>
  tools.map((tool) => {
    const blade = { ...job.blade, ...bladeOf(tool), startEdge: null, taperDeg: 0, currentBevelDeg: null }
    const aim = { ...job.aim, bevelAngleDeg: tool.bevelAngleDeg, barDistanceMm, projectionMm: null }
    const setUp = setUpOf({ ...job, blade, aim })
    const inRange = setUp.ok && setUp.value.projectionMm >= min && setUp.value.projectionMm <= max
    return { tool, projectionMm: inRange ? setUp.value.projectionMm : null }
  })

/** An iron that has its place on the rule. */
export interface StandingIron extends IronMark {
  readonly projectionMm: number
}

/** One mark of the rule: irons that are clamped alike stand under it together. */
export interface RuleMark {
  /** In the middle of its irons. */
  readonly projectionMm: number
  /** The iron in hand first, then by code. */
  readonly irons: readonly StandingIron[]
}

/** Irons whose projections differ by no more share a mark (mm): nobody clamps a blade more closely by eye. */
export const SAME_MM = 0.3

/** The irons from the first of a mark on; sorted by projection. */
const gathered = (irons: readonly StandingIron[]): readonly (readonly StandingIron[])[] => {
  const groups: StandingIron[][] = []
  for (const iron of irons) {
    const group = groups.at(-1)
    const first = group?.[0]
    if (group && first && iron.projectionMm - first.projectionMm <= SAME_MM) group.push(iron)
    else groups.push([iron])
  }
  return groups
}

/** @returns the marks of the irons that have a projection, from the least on */
export const ruleMarks = (marks: readonly IronMark[], inHandId: string | null): readonly RuleMark[] => {
  const standing = marks
    .flatMap((mark) => (mark.projectionMm === null ? [] : [{ ...mark, projectionMm: mark.projectionMm }]))
    .sort((a, b) => a.projectionMm - b.projectionMm)
  const behind = ({ tool }: StandingIron) => (tool.id === inHandId ? 0 : 1)
  return gathered(standing).map((irons) => ({
    projectionMm: ((irons[0] as StandingIron).projectionMm + (irons.at(-1) as StandingIron).projectionMm) / 2,
    irons: irons.toSorted(
      (a, b) => behind(a) - behind(b) || a.tool.code.localeCompare(b.tool.code, 'en', { numeric: true }),
    ),
  }))
}
