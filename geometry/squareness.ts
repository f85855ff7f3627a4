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
  /** Free play set at a steered fixture, right less left (mm); null: no stops, or not known. */
  readonly unequalPlayMm: number | null
  /** Null where stops can turn nothing: the fixture has none, or both are closed. */
  readonly guideArmMm: number | null
  /** Counts how often the iron was clamped anew: each time it may lie otherwise. */
  readonly clamping: number
  /** Whether the wheel was dressed along the bar as it stands: then its rim is parallel to the bar, however both lie. */
  readonly dressed: boolean
}

/** Gap under a square's blade at a length from its stock. */
export const skewOfGap = (gapMm: number, overMm: number): number => degFromRad(atan(gapMm / overMm))

/** A gap judged against the light or by a leaf is known to this (mm), one standard deviation. */
const GAP_ERROR_MM = 0.02

/** Standard error of a skew measured so. */
export const skewError = (overMm: number): number => degFromRad(GAP_ERROR_MM / overMm)

/**
 * The square tried from both sides: half the sum is the edge's skew to the iron's middle line, the difference the angle between
 * its sides, + where the iron widens towards its edge.
 */
export const bothSides = (fromLeftDeg: number, fromRightDeg: number) => ({
  skewDeg: (fromLeftDeg + fromRightDeg) / 2,
  taperDeg: fromLeftDeg - fromRightDeg,
})

/** What a square shows, with its standard errors; the taper null where it was tried from one side. */
export interface Squared {
  readonly skewDeg: number
  readonly errorDeg: number
  readonly taperDeg: number | null
  readonly taperErrorDeg: number
}

/** Gaps under the square from the left and, where tried, from the right side, both + where the right corner lies back. */
export const squared = (gapMm: number, otherGapMm: number | null, overMm: number): Squared => {
  const fromLeftDeg = skewOfGap(gapMm, overMm)
  const one = skewError(overMm)
  const taperErrorDeg = one * Math.SQRT2
  if (otherGapMm === null) return { skewDeg: fromLeftDeg, errorDeg: one, taperDeg: null, taperErrorDeg }
  return { ...bothSides(fromLeftDeg, skewOfGap(otherGapMm, overMm)), errorDeg: one / Math.SQRT2, taperErrorDeg }
}

/** What dressing along the bar takes away. */
const betweenBarAndWheel: readonly Cause[] = ['barAskew', 'barRoll', 'wheelCone']

/**
 * Degrees of skew for one unit of a cause: a degree of mounting or bar askew is a degree; a roll lowers one side, which the bevel
 * turns into 1 / tan b; a cone of c at the rim slants the rim by 2 c over the width, seen through 1 / sin b; unequal free play
 * turns the middle of the swing by half its difference over the arm. Between a bar and a wheel dressed along it nothing is left.
 */
export const skewPer = (cause: Cause, { bevelDeg, wheelWidthMm, guideArmMm, dressed }: SquareReading): number => {
  const bevelRad = radFromDeg(bevelDeg)
  if (dressed && betweenBarAndWheel.includes(cause)) return 0
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

/** Free play that turns an edge by so much, right side more by half of it and left side less (mm). */
export const playForSkew = (turnDeg: number, guideArmMm: number): number => 2 * guideArmMm * tan(radFromDeg(turnDeg))

/** Skew that the stops as they are known to be set do not account for (degrees): what the causes have to explain. */
export const unaccounted = (reading: SquareReading): number =>
  reading.skewDeg - skewPer('stops', reading) * (reading.unequalPlayMm ?? 0)

/** Skew that a reading foretells for stops set anew (degrees). @param unequalPlayMm right less left */
export const skewWithPlay = (reading: SquareReading, unequalPlayMm: number, guideArmMm: number): number =>
  unaccounted(reading) + skewPer('stops', { ...reading, guideArmMm }) * unequalPlayMm
