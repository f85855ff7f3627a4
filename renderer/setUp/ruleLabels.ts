import type { RuleMark } from './ironMarks.ts'

/** A mark as drawn, with what is written at it. */
export interface LabelledMark extends RuleMark {
  readonly xPx: number
  /** Row of its label, counted up from the rule; null: there is no room for one, the line below the rule names it. */
  readonly row: number | null
  readonly label: string
}

/** Where marks and labels go. */
export interface Paper {
  readonly rows: number
  /** Labels end before this (px). */
  readonly endPx: number
  xPx(projectionMm: number): number
  /** Codes as written, and how many more there are. */
  say(codes: readonly string[], more: number): string
}

/** A character at the labels' size, the widest that codes are written in (px). */
const CHARACTER_PX = 9
/** Between a mark and its label, and behind the label (px). */
const AROUND_PX = 8

/** Room that a label takes from its mark on (px). */
export const labelPx = (label: string): number => label.length * CHARACTER_PX + AROUND_PX

/** Everything that may be written at a mark: its first code and how many more, then code by code all of them. */
const labelsOf = ({ irons }: RuleMark, say: Paper['say']): readonly string[] => {
  const codes = irons.map(({ tool }) => tool.code)
  return codes.map((_, k) => say(codes.slice(0, k + 1), codes.length - k - 1))
}

/** Lowest row in which a label crosses no mark to the right of it: those end at their own labels. */
const rowFor = (right: readonly LabelledMark[], toPx: number): number =>
  1 + Math.max(-1, ...right.map(({ xPx, row }) => (row !== null && xPx < toPx ? row : -1)))

/**
 * Rows are given from the right: a label then only has to stay clear of marks that already have theirs, and none is crossed.
 * The shortest labels are placed first, so that as many marks as can be have one; then each is written out as far as it has room.
 *
 * @param marks from left to right
 * @returns them with their labels, from left to right
 */
export const labelledMarks = (marks: readonly RuleMark[], paper: Paper): readonly LabelledMark[] => {
  const placed: LabelledMark[] = []
  for (const mark of marks.toReversed()) {
    const xPx = paper.xPx(mark.projectionMm)
    const labels = labelsOf(mark, paper.say)
    const toPx = xPx + labelPx(labels[0] as string)
    const row = toPx > paper.endPx ? paper.rows : rowFor(placed, toPx)
    if (row >= paper.rows) {
      placed.unshift({ ...mark, xPx, row: null, label: '' })
      continue
    }
    const next = placed.find((other) => other.row !== null && other.row >= row)
    const endPx = Math.min(paper.endPx, next?.xPx ?? paper.endPx)
    placed.unshift({ ...mark, xPx, row, label: labels.findLast((label) => xPx + labelPx(label) <= endPx) ?? '' })
  }
  return placed
}
