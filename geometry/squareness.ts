import { linearFit } from './fit.ts'
import { ok, type Result } from './result.ts'
import { atan, sin, tan } from './trigonometry.ts'
import { degFromRad, radFromDeg } from './units.ts'

/**
 * An edge out of square, run backwards to what may have made it so. Small errors of the set-up add up, each by a known slope;
 * every slope here is checked against the contact grind itself in tests/geometry/squareness.test.ts.
 */

/** Errors that can turn an edge; the names are those of the job's `errors`, and `stops` is unequal free play. */
export const causes = ['mounting', 'barAskew', 'barRoll', 'wheelCone', 'stops'] as const
export type Cause = (typeof causes)[number]

/** One edge measured with a square, and how it was ground. */
export interface SquareReading {
  /** + where the right corner lies back. */
  readonly skewDeg: number
  /** Standard error of it. */
  readonly errorDeg: number
  readonly bevelDeg: number
  readonly wheelWidthMm: number
  /** Free play of a steered fixture, right less left (mm), and its guide arm; null for a fixture without stops. */
  readonly unequalPlayMm: number | null
  readonly guideArmMm: number | null
  /** Counts how often the iron was clamped anew: each time it may lie otherwise. */
  readonly clamping: number
}

/** Gap under a square's blade at a length from its stock. */
export const skewOfGap = (gapMm: number, overMm: number): number => degFromRad(atan(gapMm / overMm))

/** A gap judged against the light or by a leaf is known to this (mm), one standard deviation. */
const GAP_ERROR_MM = 0.02

/** Standard error of a skew measured so. */
export const skewError = (overMm: number): number => degFromRad(GAP_ERROR_MM / overMm)

/** The square tried from both sides: sides that are not parallel show as half the difference, the edge's skew as half the sum. */
export const bothSides = (fromLeftDeg: number, fromRightDeg: number) => ({
  skewDeg: (fromLeftDeg + fromRightDeg) / 2,
  taperDeg: fromLeftDeg - fromRightDeg,
})

/**
 * Degrees of skew for one unit of a cause: a degree of mounting or bar askew is a degree; a roll lowers one side, which the bevel
 * turns into 1 / tan b; a cone of c at the rim slants the rim by 2 c over the width, seen through 1 / sin b; unequal free play
 * turns the middle of the swing by half its difference over the arm.
 */
export const skewPer = (cause: Cause, { bevelDeg, wheelWidthMm, guideArmMm }: SquareReading): number => {
  const bevelRad = radFromDeg(bevelDeg)
  switch (cause) {
    case 'mounting':
    case 'barAskew':
      return 1
    case 'barRoll':
      return 1 / tan(bevelRad)
    case 'wheelCone':
      return -degFromRad(2 / (wheelWidthMm * sin(bevelRad)))
    case 'stops':
      return guideArmMm === null ? 0 : degFromRad(1 / (2 * guideArmMm))
  }
}

/** How large each error may well be in a workshop, one standard deviation (degrees, mm of cone, mm of free play): from memory and common practice. */
export const usualSizes: Readonly<Record<Cause, number>> = {
  mounting: 0.2,
  barAskew: 0.1,
  barRoll: 0.1,
  wheelCone: 0.05,
  stops: 0.1,
}

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
    [...readings.map(({ skewDeg, errorDeg }) => skewDeg / errorDeg), ...columns.map(() => 0)],
  )
  if (!fit.ok) return fit
  const rests = readings.map(({ skewDeg }, i) =>
    fit.value.values.reduce((rest, value, k) => rest - value * (columns[k]?.[i] as number), skewDeg),
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

/** Free play that turns an edge by so much, right side more by half of it and left side less (mm). */
export const playForSkew = (turnDeg: number, guideArmMm: number): number => 2 * guideArmMm * tan(radFromDeg(turnDeg))
