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

/** A label on the rule: its mark, and the row that it is written in so that no two run into each other. */
export interface MarkLabel extends IronMark {
  readonly projectionMm: number
  readonly xPx: number
  /** Null: there is no room for it; it is in the list. */
  readonly row: number | null
}

/** @returns labels left to right, each in the first row where it has room */
export const labelledMarks = (
  marks: readonly IronMark[],
  xPx: (mm: number) => number,
  labelPx: number,
  rows: number,
): readonly MarkLabel[] => {
  const ends = new Array<number>(rows).fill(Number.NEGATIVE_INFINITY)
  return marks
    .flatMap((mark) => (mark.projectionMm === null ? [] : [{ ...mark, projectionMm: mark.projectionMm }]))
    .sort((a, b) => a.projectionMm - b.projectionMm)
    .map((mark) => {
      const x = xPx(mark.projectionMm)
      const free = ends.findIndex((end) => end <= x)
      if (free >= 0) ends[free] = x + labelPx
      return { ...mark, xPx: x, row: free < 0 ? null : free }
    })
}
