import { type Fit, linearFit } from './fit.ts'
import { failed, ok, problem, type Result } from './result.ts'

/** Height of a curve at x for given values. */
export type Curve = (values: readonly number[], x: number) => number

/** Central differences: the cube root of a double's grain, where truncation and rounding are alike. */
const DIFFERENCE = 6e-6
const MOST_PASSES = 500
/** Damping tenfold less after a pass that helped, tenfold more after one that did not (Marquardt 1963, SIAM J. 11:431). */
const DAMPING_STEP = 10
const FIRST_DAMPING = 1e-3
/** Beyond this damping no step is left. */
const MOST_DAMPING = 1e12

const slopesAt = (curve: Curve, values: readonly number[], x: number): number[] =>
  values.map((value, k) => {
    const step = DIFFERENCE * (value === 0 ? 1 : Math.abs(value))
    const moved = (by: number) => values.with(k, value + by)
    return (curve(moved(step), x) - curve(moved(-step), x)) / (2 * step)
  })

const squares = (list: readonly number[]): number => list.reduce((total, value) => total + value * value, 0)

interface Points {
  readonly curve: Curve
  readonly x: readonly number[]
  readonly y: readonly number[]
}

const residualsAt = ({ curve, x, y }: Points, values: readonly number[]): number[] =>
  y.map((value, i) => value - curve(values, x[i] as number))

/** The damped step: rows of sqrt(damping) times each column's length below the slopes. */
const stepFrom = (
  rows: readonly (readonly number[])[],
  residuals: readonly number[],
  damping: number,
): number[] | null => {
  const count = rows[0]?.length ?? 0
  const lengths = Array.from({ length: count }, (_, k) => Math.sqrt(squares(rows.map((row) => row[k] as number))))
  const damped = lengths.map((length, k) => lengths.map((_, j) => (j === k ? Math.sqrt(damping) * length : 0)))
  const step = linearFit([...rows, ...damped], [...residuals, ...lengths.map(() => 0)])
  return step.ok ? [...step.value.values] : null
}

/** The next better values, or null where no step betters them. */
const better = (
  points: Points,
  values: readonly number[],
  from: number,
): { values: number[]; damping: number } | null => {
  const rows = points.x.map((x) => slopesAt(points.curve, values, x))
  const residuals = residualsAt(points, values)
  const now = squares(residuals)
  for (let damping = from; damping < MOST_DAMPING; damping *= DAMPING_STEP) {
    const step = stepFrom(rows, residuals, damping)
    if (step === null) return null
    const next = values.map((value, k) => value + (step[k] as number))
    if (squares(residualsAt(points, next)) < now) return { values: next, damping: damping / DAMPING_STEP }
  }
  return null
}

/**
 * Nonlinear least squares by Levenberg and Marquardt: goes on until no step makes the squares less. Checked on NIST's Misra1a
 * and Thurber from both of their starts.
 * @returns `fitSingular` where the points do not tell the values apart, `fitNotSettled` where passes run out
 */
export const curveFit = (
  curve: Curve,
  x: readonly number[],
  y: readonly number[],
  start: readonly number[],
): Result<Fit> => {
  const points = { curve, x, y }
  let state = { values: [...start], damping: FIRST_DAMPING }
  for (let pass = 0; pass < MOST_PASSES; pass++) {
    const next = better(points, state.values, state.damping)
    if (next === null) return summary(points, state.values)
    state = next
  }
  return failed(problem('fitNotSettled'))
}

/** Errors from the straight-line fit at the values found. */
const summary = (points: Points, values: number[]): Result<Fit> => {
  const rows = points.x.map((x) => slopesAt(points.curve, values, x))
  const linear = linearFit(rows, residualsAt(points, values))
  return linear.ok ? ok({ ...linear.value, values }) : linear
}
