/**
 * Least of a function of a few variables without its slopes: the simplex of Nelder and Mead (1965), with their factors.
 * Fit for figures with kinks, such as a greatest deviation. Deterministic: the same start gives the same trials.
 */
export interface SimplexOptions {
  /** First steps along each variable; none may be 0. */
  readonly steps: readonly number[]
  readonly mostTrials: number
  /** Ends when the best and the worst corner differ by no more than this. */
  readonly tolerance: number
  /** Asked before each trial; true ends the search with the best so far. */
  readonly isStopped?: () => boolean
}

/** A point and the function's value there. */
export interface Corner {
  readonly at: readonly number[]
  readonly value: number
}

type Measure = (at: readonly number[]) => Corner

/** The point on the line from one point through another: 0 at from, 1 at through. */
const along = (from: readonly number[], through: readonly number[], share: number): readonly number[] =>
  from.map((x, k) => x + ((through[k] as number) - x) * share)

/** Mean of all corners but the worst, which stands last. */
const middleOf = (corners: readonly Corner[]): readonly number[] => {
  const kept = corners.slice(0, -1)
  return (kept[0] as Corner).at.map((_, k) => kept.reduce((sum, { at }) => sum + (at[k] as number), 0) / kept.length)
}

const best = (corners: readonly Corner[]): Corner => corners[0] as Corner
const worst = (corners: readonly Corner[]): Corner => corners[corners.length - 1] as Corner

/** Sorted by value; equal ones stay in order, so that nothing hangs on the host. */
const sorted = (corners: readonly Corner[]): readonly Corner[] => [...corners].sort((a, b) => a.value - b.value)

/** A corner to take the worst one's place, or null where all must draw in. */
const replacement = (corners: readonly Corner[], measure: Measure): Corner | null => {
  const middle = middleOf(corners)
  const last = worst(corners)
  const mirrored = measure(along(last.at, middle, 2))
  if (mirrored.value < best(corners).value) {
    const further = measure(along(last.at, middle, 3))
    return further.value < mirrored.value ? further : mirrored
  }
  if (mirrored.value < (corners[corners.length - 2] as Corner).value) return mirrored
  const inner =
    mirrored.value < last.value ? measure(along(last.at, middle, 1.5)) : measure(along(last.at, middle, 0.5))
  return inner.value < Math.min(mirrored.value, last.value) ? inner : null
}

const drawnIn = (corners: readonly Corner[], measure: Measure): readonly Corner[] =>
  corners.map((corner, k) => (k === 0 ? corner : measure(along(best(corners).at, corner.at, 0.5))))

/** @returns the best point met, which is never worse than the start */
export const leastOf = (
  valueAt: (at: readonly number[]) => number,
  start: readonly number[],
  { steps, mostTrials, tolerance, isStopped = () => false }: SimplexOptions,
): Corner => {
  let trials = 0
  const ended = () => trials >= mostTrials || isStopped()
  const measure: Measure = (at) => {
    trials++
    return { at, value: valueAt(at) }
  }
  const stepped = (k: number) => start.map((x, i) => (i === k ? x + (steps[k] as number) : x))
  let corners = sorted([measure(start), ...steps.map((_, k) => measure(stepped(k)))])
  while (!ended() && worst(corners).value - best(corners).value > tolerance) {
    const found = replacement(corners, measure)
    corners = sorted(found === null ? drawnIn(corners, measure) : [...corners.slice(0, -1), found])
  }
  return best(corners)
}
