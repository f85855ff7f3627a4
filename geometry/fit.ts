import { failed, ok, problem, type Result } from './result.ts'

/** A least-squares fit. Standard errors are residualSd x sqrt of the diagonal of (X'X)^-1; residualSd is null without spare points. */
export interface Fit {
  readonly values: readonly number[]
  readonly standardErrors: readonly number[] | null
  readonly residuals: readonly number[]
  readonly residualSd: number | null
  /** Standard errors for a residual sd of 1: to scale by a known spread. */
  readonly unitErrors: readonly number[]
  /** (X'X)^-1. */
  readonly unitCovariance: readonly (readonly number[])[]
}

type Rows = readonly (readonly number[])[]

/** A column shorter than this after those before it are taken out, its own length 1, hangs on them: rounding leaves 1e-15 or so. */
const SINGULAR = 1e-12

const at = (list: ArrayLike<number>, i: number): number => list[i] as number
const dot = (a: ArrayLike<number>, b: ArrayLike<number>, from = 0): number => {
  let total = 0
  for (let i = from; i < a.length; i++) total += at(a, i) * at(b, i)
  return total
}

/** Reflects a column by I - 2 v v' / (v'v), v from `from` on. */
const reflect = (v: Float64Array, column: Float64Array, from: number): void => {
  const share = (2 * dot(v, column, from)) / dot(v, v, from)
  for (let i = from; i < v.length; i++) column[i] = at(column, i) - share * at(v, i)
}

interface Factor {
  readonly columns: readonly Float64Array[]
  readonly reflectors: readonly Float64Array[]
  readonly lengths: readonly number[]
}

/** Householder's QR of columns brought to length 1 (Golub and Van Loan, "Matrix Computations", 5.2); null: columns hang together. */
const factor = (rows: Rows): Factor | null => {
  const count = rows[0]?.length ?? 0
  if (rows.length < count) return null
  const raw = Array.from({ length: count }, (_, j) => Float64Array.from(rows, (row) => at(row, j)))
  const lengths = raw.map((column) => Math.sqrt(dot(column, column)))
  const columns = raw.map((column, j) => column.map((x) => x / at(lengths, j)))
  const reflectors: Float64Array[] = []
  for (const [k, column] of columns.entries()) {
    const length = Math.sqrt(dot(column, column, k))
    if (!(length > SINGULAR)) return null
    const v = column.slice()
    v[k] = at(v, k) + (at(v, k) >= 0 ? length : -length)
    for (const other of columns.slice(k)) reflect(v, other, k)
    reflectors.push(v)
  }
  return { columns, reflectors, lengths }
}

/** Solves R x = b from the last row up. */
const backSolve = ({ columns, lengths }: Factor, b: ArrayLike<number>): number[] => {
  const x = new Array<number>(columns.length).fill(0)
  for (let i = columns.length - 1; i >= 0; i--) {
    let rest = at(b, i)
    for (let j = i + 1; j < columns.length; j++) rest -= at(columns[j] as Float64Array, i) * at(x, j)
    x[i] = rest / at(columns[i] as Float64Array, i)
  }
  return x.map((value, i) => value / at(lengths, i))
}

const solve = (qr: Factor, y: ArrayLike<number>): number[] => {
  const turned = Float64Array.from(y)
  for (const [k, v] of qr.reflectors.entries()) reflect(v, turned, k)
  return backSolve(qr, turned)
}

/** (X'X)^-1 = R^-1 R^-1'. */
const covarianceOf = (qr: Factor): number[][] => {
  const count = qr.lengths.length
  const inverse = qr.lengths.map((_, k) =>
    backSolve(
      qr,
      Float64Array.from({ length: count }, (_, i) => (i === k ? 1 : 0)),
    ),
  )
  return qr.lengths.map((_, i) =>
    qr.lengths.map((_, j) => inverse.reduce((total, column) => total + at(column, i) * at(column, j), 0)),
  )
}

const residualsOf = (rows: Rows, y: readonly number[], values: readonly number[]): number[] =>
  y.map((value, i) => value - dot(rows[i] as readonly number[], values))

/** The fit at hand, with what its residuals say of the errors. */
const fitted = (values: number[], residuals: number[], unitCovariance: number[][]): Fit => {
  const unitErrors = unitCovariance.map((row, i) => Math.sqrt(at(row, i)))
  const spare = residuals.length - values.length
  const residualSd = spare > 0 ? Math.sqrt(dot(residuals, residuals) / spare) : null
  const standardErrors = residualSd === null ? null : unitErrors.map((error) => error * residualSd)
  return { values, standardErrors, residuals, residualSd, unitErrors, unitCovariance }
}

/**
 * Linear least squares y = X b by QR, refined once with its own residuals. Checked on NIST's Longley, Norris and Pontius.
 * @param rows a row of X for each y
 * @returns `fitSingular` where the points do not tell the values apart
 */
export const linearFit = (rows: Rows, y: readonly number[]): Result<Fit> => {
  const qr = factor(rows)
  if (qr === null) return failed(problem('fitSingular'))
  const first = solve(qr, y)
  const correction = solve(qr, residualsOf(rows, y, first))
  const values = first.map((value, i) => value + at(correction, i))
  return ok(fitted(values, residualsOf(rows, y, values), covarianceOf(qr)))
}

/** Middle value; mean of the middle two. */
export const median = (list: readonly number[]): number => {
  const sorted = [...list].sort((a, b) => a - b)
  const middle = sorted.length >> 1
  return sorted.length % 2 === 1 ? at(sorted, middle) : (at(sorted, middle - 1) + at(sorted, middle)) / 2
}
