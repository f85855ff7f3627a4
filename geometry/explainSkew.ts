import { linearFit } from './fit.ts'
import { ok, type Result } from './result.ts'
import { type Cause, causes, type SquareReading, skewPer, unaccounted, usualSizes } from './squareness.ts'

/** What one cause would have to be, were it the only one. */
export interface Explanation {
  readonly cause: Cause
  /** Size of the error: degrees, mm for cone and stops; the newest clamping's for the mounting. */
  readonly size: number
  /** Left unexplained, root mean square (degrees). */
  readonly restDeg: number
  /** How likely it is beside the others, all told 1: the evidence of the readings, each cause's size usual or not (Bayes). */
  readonly likelihood: number
}

/** What the readings say. */
export interface Squareness {
  /** Likeliest first. */
  readonly explanations: readonly Explanation[]
  /** Causes that these readings cannot tell apart, in groups of two and more. */
  readonly alike: readonly (readonly Cause[])[]
  /** Readings that no single cause explains: rest beyond what the square can tell. */
  readonly contradict: boolean
}

/** e^(-1/2): a normal error's likelihood falls by this for each unit of its square. */
const HALF_E = 0.6065306597126334

/** Rest of the best explanation in standard errors beyond which the readings contradict each other. */
const CONTRADICTS = 3
/** Cosine between two causes' slopes beyond which they do the same to every reading. */
const SAME_COSINE = 0.999

/** Slopes of one cause over the readings, a column for each clamping of the mounting. */
const columnsOf = (cause: Cause, readings: readonly SquareReading[]): readonly (readonly number[])[] => {
  const slopes = readings.map((reading) => skewPer(cause, reading))
  if (cause !== 'mounting') return [slopes]
  const clampings = [...new Set(readings.map(({ clamping }) => clamping))]
  return clampings.map((each) => slopes.map((slope, i) => (readings[i]?.clamping === each ? slope : 0)))
}

interface Single {
  readonly cause: Cause
  readonly size: number
  readonly restDeg: number
  /** Squares of what is off, in standard errors, what is usual included. */
  readonly cost: number
  /** How much of what was thought possible the readings leave: a cause with much to choose from explains less by fitting well. */
  readonly occam: number
}

/** Fits one cause alone, its usual size as one reading more that says 0. */
const single = (cause: Cause, readings: readonly SquareReading[]): Result<Single | null> => {
  const columns = columnsOf(cause, readings)
  if (columns.every((column) => column.every((slope) => slope === 0))) return ok(null)
  const usual = usualSizes[cause]
  const fit = linearFit(
    [
      ...readings.map(({ errorDeg }, i) => columns.map((column) => (column[i] as number) / errorDeg)),
      ...columns.map((_, k) => columns.map((__, j) => (j === k ? 1 / usual : 0))),
    ],
    [...readings.map((reading) => unaccounted(reading) / reading.errorDeg), ...columns.map(() => 0)],
  )
  if (!fit.ok) return fit
  const rests = readings.map((reading, i) =>
    fit.value.values.reduce((rest, value, k) => rest - value * (columns[k]?.[i] as number), unaccounted(reading)),
  )
  const restDeg = Math.sqrt(rests.reduce((sum, rest) => sum + rest * rest, 0) / readings.length)
  const cost = fit.value.residuals.reduce((sum, residual) => sum + residual * residual, 0)
  const occam = fit.value.unitErrors.reduce((product, error) => (product * error) / usual, 1)
  return ok({ cause, size: fit.value.values.at(-1) as number, restDeg, cost, occam })
}

const cosine = (a: readonly number[], b: readonly number[]): number => {
  const dot = (x: readonly number[], y: readonly number[]) =>
    x.reduce((sum, each, i) => sum + each * (y[i] as number), 0)
  return dot(a, b) / Math.sqrt(dot(a, a) * dot(b, b))
}

/** Causes whose slopes are proportional over all readings; a mounting that was clamped more than once is like no other. */
const alikeOf = (present: readonly Cause[], readings: readonly SquareReading[]): readonly (readonly Cause[])[] => {
  const groups: Cause[][] = []
  for (const cause of present) {
    const columns = columnsOf(cause, readings)
    const column = columns.length === 1 ? (columns[0] as readonly number[]) : null
    const group = groups.find(([first]) => {
      const others = columnsOf(first as Cause, readings)
      return (
        column !== null && others.length === 1 && Math.abs(cosine(column, others[0] as readonly number[])) > SAME_COSINE
      )
    })
    if (group) group.push(cause)
    else groups.push([cause])
  }
  return groups.filter((group) => group.length > 1)
}

/**
 * Ranks what may have turned the edges, by one cause at a time: with the few readings that a bench takes, several at once would
 * explain anything.
 */
export const explainSkew = (readings: readonly SquareReading[]): Result<Squareness> => {
  const singles: Single[] = []
  for (const cause of causes) {
    const found = single(cause, readings)
    if (!found.ok) return found
    if (found.value) singles.push(found.value)
  }
  const least = singles.reduce((a, { cost }) => Math.min(a, cost), Number.POSITIVE_INFINITY)
  const weights = singles.map(({ cost, occam }) => occam * HALF_E ** (cost - least))
  const total = weights.reduce((a, b) => a + b, 0)
  const explanations = singles
    .map(({ cause, size, restDeg }, i) => ({ cause, size, restDeg, likelihood: (weights[i] as number) / total }))
    .sort((a, b) => b.likelihood - a.likelihood)
  const best = Math.min(...explanations.map(({ restDeg }) => restDeg))
  const errorDeg = Math.max(...readings.map((reading) => reading.errorDeg))
  return ok({
    explanations,
    alike: alikeOf(
      singles.map(({ cause }) => cause),
      readings,
    ),
    contradict: best > CONTRADICTS * errorDeg,
  })
}
