import { type Rock, rockOf, type SteelLine } from './straightedge.ts'
import { atan2 } from './trigonometry.ts'

/** Angles of a bevel in section against the back, and its length from edge to heel. */
export interface BevelAngles {
  /** Of the steel at the very edge. */
  readonly tipRad: number
  /** Of the line from edge to heel. */
  readonly chordRad: number
  readonly chordMm: number
  /** What a protractor's arm finds that lies on the bevel: from one angle to the other where it rocks, else twice the same. */
  readonly foundRad: readonly [leastRad: number, mostRad: number]
}

/** Angle to the back of a line that recedes so much for each mm of height. */
const angleOf = (recession: number): number => atan2(1, recession)

const slopeFrom = (atMm: ArrayLike<number>, backMm: ArrayLike<number>, k: number, first: number): number =>
  ((backMm[first + k + 1] as number) - (backMm[first + k] as number)) / ((atMm[k + 1] as number) - (atMm[k] as number))

/**
 * How far the steel recedes for each mm of height at the very edge: of the parabola through the first three points, exact for
 * their curve to second order.
 * @param first where in `backMm` the section begins
 */
export const recessionAtEdge = (atMm: ArrayLike<number>, backMm: ArrayLike<number>, first = 0): number => {
  const near = slopeFrom(atMm, backMm, 0, first)
  const far = slopeFrom(atMm, backMm, 1, first)
  const nearMm = (atMm[1] as number) - (atMm[0] as number)
  return near - ((far - near) * nearMm) / ((atMm[2] as number) - (atMm[0] as number))
}

const foundBy = ({ first, last }: Rock): readonly [number, number] => [angleOf(last), angleOf(first)]

/**
 * The bevel as it stands, partly ground or wholly.
 * @param section heights from the back (0 at the edge) with where the steel begins at each; three points or more
 */
export const bevelAngles = (section: SteelLine): BevelAngles => {
  const { atMm, backMm } = section
  const end = atMm.length - 1
  const [heightMm, alongMm] = [
    (atMm[end] as number) - (atMm[0] as number),
    (backMm[end] as number) - (backMm[0] as number),
  ]
  return {
    tipRad: angleOf(recessionAtEdge(atMm, backMm)),
    chordRad: atan2(heightMm, alongMm),
    chordMm: Math.sqrt(heightMm * heightMm + alongMm * alongMm),
    foundRad: foundBy(rockOf(section)),
  }
}
